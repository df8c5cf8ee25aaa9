import { Section } from "@/app/_parts/section";
import { TableBox } from "@/app/_parts/table-box";
import type { SafetyLine } from "@/lib/views/safety-list";

/** By kind and practice, with days and what is open; no visit and no person. */
export function Counts(props: { lines: readonly SafetyLine[] }) {
  return (
    <Section
      id="counts"
      title="By kind and practice"
      note="Counts and days only. Patients are counted apart from events; counts of people under five are masked."
    >
      {props.lines.length === 0 ? (
        <p className="missing">
          The records of this period hold no safety item. What was not written down does not show
          here.
        </p>
      ) : (
        <TableBox label="Safety items by kind and practice">
          <table className="fold">
            <thead>
              <tr>
                <th scope="col">What</th>
                <th scope="col">Practice</th>
                <th scope="col" className="num">
                  How many
                </th>
                <th scope="col">Days of the visits</th>
                <th scope="col">Still open</th>
                <th scope="col">Patients concerned</th>
              </tr>
            </thead>
            <tbody>
              {props.lines.map((line) => (
                <tr key={line.id}>
                  <th scope="row">{line.what}</th>
                  <td data-label="Practice">{line.practice}</td>
                  <td className="num" data-label="How many">
                    {line.events}
                  </td>
                  <td data-label="Days of the visits">{line.days}</td>
                  <td data-label="Still open">
                    {line.open ? <span className="mark mark-open">{line.open}</span> : null}
                  </td>
                  <td data-label="Patients concerned">{line.patients}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableBox>
      )}
    </Section>
  );
}
