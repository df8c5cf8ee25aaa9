import type { SafetyLine } from "@/lib/views/safety-list";
import { TableBox } from "../../_parts/table-box";

/** Incidents, and separations of which the patient is not known to have been told. */
export function Safety(props: { lines: readonly SafetyLine[] }) {
  if (props.lines.length === 0) {
    return (
      <p className="missing">
        No incident is recorded in this period, and no separation of which the patient was not told.
        What was not written down does not show here.
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
                <td data-label="Patient told">{line.told}</td>
                <td data-label="Reported">
                  {line.reported || <span className="missing">not asked of separations</span>}
                </td>
                <td data-label="Patients concerned">{line.patients}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </>
  );
}
