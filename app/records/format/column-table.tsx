import type { FormatTable } from "@/lib/reports/record-format";
import { TableBox } from "../../_parts/table-box";

/** The columns of one table. */
export function ColumnTable(props: { of: FormatTable }) {
  return (
    <TableBox label={`Columns of ${props.of.name}`}>
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">Column</th>
            <th scope="col">What it is</th>
            <th scope="col">A cell holds</th>
            <th scope="col">Example</th>
          </tr>
        </thead>
        <tbody>
          {props.of.columns.map((column) => (
            <tr key={column.column}>
              <th scope="row">
                <code>{column.column}</code>
              </th>
              <td>
                {column.says} {column.required ? <span className="tag">required</span> : null}{" "}
                {column.key ? <span className="tag">tells rows apart</span> : null}
              </td>
              <td data-label="A cell holds">{column.holds}</td>
              <td data-label="Example">
                <code>{column.example}</code>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
