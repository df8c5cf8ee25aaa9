import { Link } from "@/app/_parts/link";
import { Section } from "@/app/_parts/section";
import { TableBox } from "@/app/_parts/table-box";
import type { ClinicianQuarter } from "@/lib/reports/clinician-quarter";

/** The viewer's own records that ask for a look. */
export function WorthALook(props: { of: ClinicianQuarter["look"] }) {
  const { lines, more } = props.of;
  return (
    <Section
      id="look"
      title="Records worth a look"
      note="Separations, values that do not fit together, rows held, and what is not recorded."
    >
      {lines.length === 0 ? (
        <p>None: nothing of yours separated, disagrees or is missing here.</p>
      ) : (
        <TableBox label="Canals worth a look">
          <table className="fold">
            <thead>
              <tr>
                <th scope="col">Day</th>
                <th scope="col">Canal</th>
                <th scope="col">Why</th>
              </tr>
            </thead>
            <tbody>
              {lines.map((line) => (
                <tr key={line.id}>
                  <td className="nowrap">{line.day}</td>
                  <td>
                    <Link href={line.href}>{line.unit}</Link>
                  </td>
                  <td>{line.why}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableBox>
      )}
      {more ? <p className="small soft">{more}</p> : null}
    </Section>
  );
}
