import { Link } from "@/app/_parts/link";
import type { CompletenessLine } from "@/lib/views/completeness-lines";
import { TableBox } from "./table-box";

/** How complete the records behind each measure are; a line with an address leads to its measure. */
export function CompletenessTable(props: {
  lines: readonly (CompletenessLine & { readonly href?: string })[];
}) {
  return (
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
          {props.lines.map((line) => (
            <tr key={line.measure}>
              <th scope="row">
                {line.href ? <Link href={line.href}>{line.title}</Link> : line.title}
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
  );
}
