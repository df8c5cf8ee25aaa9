import { Link } from "@/app/_parts/link";
import { Section } from "@/app/_parts/section";
import { TableBox } from "@/app/_parts/table-box";
import type { SafetyItems } from "@/lib/reports/safety-page";
import { Narrowing } from "./narrowing";

/** The items with their visits, a page of them. */
export function Items(props: { of: SafetyItems; as: "lead" | "own" }) {
  const { lines, words, previous, next } = props.of;
  const lead = props.as === "lead";
  return (
    <Section
      id="items"
      title="Each item"
      note="Open is what is still to be done, or to be written down."
    >
      <Narrowing of={props.of} />
      <p className="small soft">{words}</p>
      {lines.length === 0 ? null : (
        <TableBox label="Safety items">
          <table className="fold">
            <thead>
              <tr>
                <th scope="col">Day</th>
                <th scope="col">What</th>
                <th scope="col">In the records</th>
                <th scope="col">Open</th>
                {lead ? <th scope="col">Clinician</th> : null}
                <th scope="col">Where</th>
                <th scope="col">Visit</th>
              </tr>
            </thead>
            <tbody>
              {lines.map((line) => (
                <tr key={line.id}>
                  <td className="nowrap" data-label="Day">
                    {line.day}
                  </td>
                  <th scope="row">{line.what}</th>
                  <td data-label="In the records">{line.detail}</td>
                  <td data-label="Open">
                    {line.open.length > 0 ? (
                      <span className="mark mark-open">{line.open.join("; ")}</span>
                    ) : null}
                  </td>
                  {lead ? <td data-label="Clinician">{line.clinician}</td> : null}
                  <td data-label="Where">{line.where}</td>
                  <td data-label="Visit">
                    <Link href={line.href}>{line.visit}</Link>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableBox>
      )}
      <nav className="row" aria-label="Pages of safety items">
        {previous ? <Link href={previous}>← Later ones</Link> : null}
        {next ? <Link href={next}>Earlier ones →</Link> : null}
      </nav>
    </Section>
  );
}
