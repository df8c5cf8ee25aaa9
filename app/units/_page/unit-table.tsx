import { Link } from "@/app/_parts/link";
import { TableBox } from "@/app/_parts/table-box";
import { UnitState } from "@/app/_parts/unit-state";
import type { UnitLine } from "@/lib/views/unit-lines";

/** Units one below the other, the latest first. */
export function UnitTable(props: { lines: readonly UnitLine[]; named: boolean }) {
  const whose = props.named ? "Clinician, chair" : "Chair";
  return (
    <TableBox label="Units">
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">{whose}</th>
            <th scope="col">Unit</th>
            <th scope="col">Outcome</th>
          </tr>
        </thead>
        <tbody>
          {props.lines.map((line) => (
            <tr key={line.id}>
              <th scope="row">{line.href ? <Link href={line.href}>{line.day}</Link> : line.day}</th>
              <td data-label={whose}>{line.whose}</td>
              <td data-label="Unit">{line.what}</td>
              <td data-label="Outcome">
                <UnitState of={line} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
