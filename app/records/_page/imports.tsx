import { Link } from "@/app/_parts/link";
import type { ImportLine } from "@/lib/views/import-lines";
import { TableBox } from "../../_parts/table-box";

/** The imports with what became of their rows. */
export function Imports(props: { imports: readonly ImportLine[] }) {
  if (props.imports.length === 0) return <p className="missing">Nothing was brought in yet.</p>;
  return (
    <TableBox label="Imports and what became of their rows">
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">Import</th>
            <th scope="col">When, by whom</th>
            <th scope="col">Files</th>
            <th scope="col" className="num">
              Read
            </th>
            <th scope="col" className="num">
              Accepted
            </th>
            <th scope="col" className="num">
              Repeated
            </th>
            <th scope="col" className="num">
              Held
            </th>
            <th scope="col" className="num">
              Let go
            </th>
            <th scope="col">State</th>
          </tr>
        </thead>
        <tbody>
          {props.imports.map((one) => (
            <tr key={one.id}>
              <th scope="row" className="nowrap">
                <Link href={`/records/imports/${one.id}`}>Import {one.id}</Link>
              </th>
              <td data-label="When, by whom">
                {one.at}, {one.by}
              </td>
              <td data-label="Files">{one.fileNames}</td>
              <td className="num" data-label="Read">
                {one.counts.read}
              </td>
              <td className="num" data-label="Accepted">
                {one.counts.accepted}
              </td>
              <td className="num" data-label="Repeated">
                {one.counts.repeated}
              </td>
              <td className="num" data-label="Held">
                {one.counts.held}
              </td>
              <td className="num" data-label="Let go">
                {one.counts.letGo}
              </td>
              <td data-label="State">{one.state}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
