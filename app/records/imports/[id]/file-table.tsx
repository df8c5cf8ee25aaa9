import type { ImportLine } from "@/lib/views/import-lines";
import { TableBox } from "../../../_parts/table-box";

/** The files of an import; the counts of each line add up to the rows read. */
export function FileTable(props: { of: ImportLine }) {
  const { files, counts } = props.of;
  return (
    <TableBox label="Files of the import">
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">File</th>
            <th scope="col">Table</th>
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
          </tr>
        </thead>
        <tbody>
          {[
            ...files,
            ...(files.length > 1
              ? [{ id: "all", name: "All files", table: "", mapping: "", ...counts }]
              : []),
          ].map((file) => (
            <tr key={file.id} className={file.id === "all" ? "whole" : undefined}>
              <th scope="row">{file.name}</th>
              <td data-label="Table">
                {file.table}
                {file.mapping ? <div className="hint">by {file.mapping}</div> : null}
              </td>
              <td className="num" data-label="Read">
                {file.read}
              </td>
              <td className="num" data-label="Accepted">
                {file.accepted}
              </td>
              <td className="num" data-label="Repeated">
                {file.repeated}
              </td>
              <td className="num" data-label="Held">
                {file.held}
              </td>
              <td className="num" data-label="Let go">
                {file.letGo}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
