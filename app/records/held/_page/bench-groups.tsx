import { Link } from "@/app/_parts/link";
import { TableBox } from "@/app/_parts/table-box";
import type { BenchGroup } from "@/lib/views/bench-groups";

/** Rows gathered by what was found where. */
export function BenchGroups(props: { groups: readonly BenchGroup[] }) {
  return (
    <TableBox label="Rows by reason">
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">What was found</th>
            <th scope="col">Table</th>
            <th scope="col">Column</th>
            <th scope="col" className="num">
              Rows
            </th>
            <th scope="col">Files</th>
          </tr>
        </thead>
        <tbody>
          {props.groups.map((group) => (
            <tr key={group.id}>
              <th scope="row">
                <Link href={group.address}>
                  {group.what}
                  <span className="only-heard">
                    {" "}
                    in {group.column} of {group.table}
                  </span>
                </Link>
              </th>
              <td data-label="Table">{group.table}</td>
              <td data-label="Column">{group.column}</td>
              <td className="num" data-label="Rows">
                {group.rows}
              </td>
              <td data-label="Files">{group.files}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
