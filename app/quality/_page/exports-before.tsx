import type { ExportLine } from "@/lib/views/export-lines";
import { TableBox } from "../../_parts/table-box";

/** What left the house, when and by whom. */
export function ExportsBefore(props: { lines: readonly ExportLine[] }) {
  if (props.lines.length === 0) return <p className="missing">Nothing has been exported yet.</p>;
  return (
    <TableBox label="Exports made before">
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">When</th>
            <th scope="col">By</th>
            <th scope="col">What</th>
            <th scope="col">Period</th>
            <th scope="col">Practices</th>
            <th scope="col">SHA-256 of the file</th>
            <th scope="col">Fingerprint of the report</th>
          </tr>
        </thead>
        <tbody>
          {props.lines.map((line) => (
            <tr key={line.id}>
              <th scope="row">{line.at}</th>
              <td data-label="By">{line.by}</td>
              <td data-label="What">{line.what}</td>
              <td data-label="Period">{line.period}</td>
              <td data-label="Practices">{line.scope}</td>
              <td data-label="SHA-256 of the file" className="hash">
                <code>{line.sha256}</code>
              </td>
              <td data-label="Fingerprint of the report" className="hash">
                {line.fingerprint ? <code>{line.fingerprint}</code> : "–"}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
