import type { ExceptionLine } from "@/lib/views/exception-lines";
import { TableBox } from "../../_parts/table-box";

/** Exceptions by criterion and reason. */
export function Exceptions(props: { lines: readonly ExceptionLine[] }) {
  if (props.lines.length === 0)
    return <p className="missing">No exception was recorded in this period.</p>;
  return (
    <TableBox label="Exceptions by criterion and reason">
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">Criterion</th>
            <th scope="col">Where</th>
            <th scope="col">Reason</th>
            <th scope="col" className="num">
              Units
            </th>
            <th scope="col" className="num">
              Share
            </th>
          </tr>
        </thead>
        <tbody>
          {props.lines.map((line) => (
            <tr key={line.id}>
              <th scope="row">{line.criterion}</th>
              <td data-label="Where">{line.about}</td>
              <td data-label="Reason">{line.reason}</td>
              <td className="num" data-label="Units">
                {line.units}
              </td>
              <td className="num" data-label="Share">
                {line.share}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
