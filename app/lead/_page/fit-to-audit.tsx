import Link from "next/link";
import { TableBox } from "@/app/_parts/table-box";
import type { LeadQuarter } from "@/lib/views/lead-quarter";
import { WeekTable } from "./week-table";

/** Records got by chair and week, completeness, held rows, and values that disagree. */
export function FitToAudit(props: { view: LeadQuarter }) {
  const { weeks, completeness, held, disagreeing } = props.view;
  return (
    <>
      <h3>Visits by chair and week</h3>
      <WeekTable grid={weeks} />
      <h3>Completeness of each measure</h3>
      <TableBox label="Completeness of each measure">
        <table className="fold">
          <thead>
            <tr>
              <th scope="col">Measure</th>
              <th scope="col" className="num">
                Recorded
              </th>
              <th scope="col" className="num">
                Complete
              </th>
              <th scope="col">Floor for a verdict</th>
            </tr>
          </thead>
          <tbody>
            {completeness.map((line) => (
              <tr key={line.measure}>
                <th scope="row">
                  <Link href={line.href}>{line.title}</Link>
                </th>
                <td className="num" data-label="Recorded">
                  {line.recorded}
                </td>
                <td className="num" data-label="Complete">
                  {line.share}
                </td>
                <td data-label="Floor for a verdict">
                  {line.underFloor ? (
                    <span className="mark mark-missing">{line.note}</span>
                  ) : (
                    line.note
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
      <h3>Held rows</h3>
      <p>{held}</p>
      <h3 id="disagreeing">Values that disagree</h3>
      <p>{disagreeing.words}</p>
      {disagreeing.canals.length > 0 ? (
        <ul>
          {disagreeing.canals.map((one) => (
            <li key={one.id}>
              <Link href={one.href}>{one.words}</Link>
            </li>
          ))}
        </ul>
      ) : null}
    </>
  );
}
