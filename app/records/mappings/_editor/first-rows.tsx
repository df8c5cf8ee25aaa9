import { TableBox } from "@/app/_parts/table-box";
import type { FirstRows as View } from "@/lib/views/mapping/preview-view";

/** The first rows of the file as it is; columns that name patients are not shown. */
export function FirstRows(props: { first: View }) {
  const { columns, rows } = props.first;
  if (columns.length === 0) return null;
  return (
    <TableBox label="The first rows of the file as they are understood">
      <table>
        <thead>
          <tr>
            <th scope="col">Line</th>
            {columns.map(({ name }) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ line, cells }) => (
            <tr key={line}>
              <th scope="row">{line}</th>
              {cells.map((cell, place) => (
                <td key={columns[place]?.name} className="nowrap">
                  {columns[place]?.hidden ? <span className="soft">not shown</span> : cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
