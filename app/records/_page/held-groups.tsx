import Link from "next/link";
import type { HeldGroup } from "@/lib/views/held-lines";
import { TableBox } from "../../_parts/table-box";

/** Rows gathered by what is wrong with them. */
export function HeldGroups(props: { groups: readonly HeldGroup[] }) {
  return (
    <TableBox label="Rows by reason">
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">What is wrong</th>
            <th scope="col">Table</th>
            <th scope="col">Column</th>
            <th scope="col" className="num">
              Rows
            </th>
          </tr>
        </thead>
        <tbody>
          {props.groups.map((group) => (
            <tr key={group.id}>
              <th scope="row">
                <Link href={group.address}>{group.why}</Link>
              </th>
              <td data-label="Table">{group.table}</td>
              <td data-label="Column">{group.column}</td>
              <td className="num" data-label="Rows">
                {group.rows}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
