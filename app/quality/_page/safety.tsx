import type { SafetyLine } from "@/lib/views/safety-list";
import { TableBox } from "../../_parts/table-box";

/** Contacts of irrigants, separations that are still open, and incidents: counts, days and what is still to be done. */
export function Safety(props: { lines: readonly SafetyLine[] }) {
  if (props.lines.length === 0) {
    return (
      <p className="missing">
        No incident is recorded in this period, no contact of hypochlorite with chlorhexidine, and
        no separation that is open. What was not written down does not show here.
      </p>
    );
  }
  return (
    <>
      <p className="small soft">
        Patients are counted apart from events; counts of people under five are masked.
      </p>
      <TableBox label="Safety events by kind and practice">
        <table className="fold">
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">Practice</th>
              <th scope="col" className="num">
                Events
              </th>
              <th scope="col">Days of the visits</th>
              <th scope="col">Patient told</th>
              <th scope="col">Reported</th>
              <th scope="col">Still open</th>
              <th scope="col">Patients concerned</th>
            </tr>
          </thead>
          <tbody>
            {props.lines.map((line) => (
              <tr key={line.id}>
                <th scope="row">{line.what}</th>
                <td data-label="Practice">{line.practice}</td>
                <td className="num" data-label="Events">
                  {line.events}
                </td>
                <td data-label="Days of the visits">{line.days}</td>
                <td data-label="Patient told">
                  {line.told || <span className="missing">not asked</span>}
                </td>
                <td data-label="Reported">
                  {line.reported || <span className="missing">not asked</span>}
                </td>
                <td data-label="Still open">{line.open || "nothing"}</td>
                <td data-label="Patients concerned">{line.patients}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </>
  );
}
