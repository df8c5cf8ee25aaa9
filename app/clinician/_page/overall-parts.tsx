import { TableBox } from "@/app/_parts/table-box";
import type { CompositePart } from "@/lib/views/composite";

/** Each criterion's share of the opportunities, with those of visits that were not recorded. */
export function OverallParts(props: { of: readonly CompositePart[] }) {
  return (
    <TableBox label="Opportunities by criterion">
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">Criterion</th>
            <th scope="col" className="num">
              Visits met, of those with it
            </th>
            <th scope="col" className="num">
              Share
            </th>
            <th scope="col" className="num">
              Not recorded
            </th>
          </tr>
        </thead>
        <tbody>
          {props.of.map((part) => (
            <tr key={part.id}>
              <th scope="row">{part.title}</th>
              <td className="num" data-label="Visits met, of those with it">
                {part.counts}
              </td>
              <td className="num" data-label="Share">
                {part.share}
              </td>
              <td className="num" data-label="Not recorded">
                {part.notRecorded}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
