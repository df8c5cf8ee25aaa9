import { Link } from "@/app/_parts/link";
import type { MappingLine } from "@/lib/views/mapping/mapping-lines";
import { TableBox } from "../../../_parts/table-box";

/** The kept mappings, a row each. */
export function MappingTable(props: { mappings: readonly MappingLine[] }) {
  return (
    <TableBox label="Kept mappings">
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">Mapping</th>
            <th scope="col">Version</th>
            <th scope="col">Kept</th>
            <th scope="col">Feeds</th>
            <th scope="col">Files that it fits</th>
            <th scope="col" className="num">
              Files read
            </th>
          </tr>
        </thead>
        <tbody>
          {props.mappings.map((one) => (
            <tr key={one.name}>
              <th scope="row">
                <Link href={one.address}>{one.name}</Link>
                {one.retired ? <span className="tag"> retired</span> : null}
              </th>
              <td data-label="Version">{one.version}</td>
              <td data-label="Kept">{one.kept}</td>
              <td data-label="Feeds">{one.feeds}</td>
              <td data-label="Files that it fits">{one.shape}</td>
              <td className="num" data-label="Files read">
                {one.files}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
