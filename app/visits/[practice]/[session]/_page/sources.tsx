import { TableBox } from "@/app/_parts/table-box";
import type { VisitView } from "@/lib/reports/visit";

/** Every row of the visit with the file and line it came from. */
export function Sources(props: { of: VisitView["sources"] }) {
  return (
    <>
      {props.of.map((group) => (
        <details key={group.table} open={group.table === "visit"}>
          <summary>
            {group.table} ({group.rows.length})
          </summary>
          <TableBox label={`Where it comes from: ${group.table}`}>
            <table className="fold">
              <thead>
                <tr>
                  <th scope="col">Recorded</th>
                  <th scope="col">File and line</th>
                  <th scope="col">Seen again</th>
                </tr>
              </thead>
              <tbody>
                {group.rows.map((row) => (
                  <tr key={row.id}>
                    <td>{row.words}</td>
                    <td data-label="From">
                      {row.source.file}, line {row.source.line}
                    </td>
                    <td data-label="Seen again">
                      {row.again.length === 0
                        ? "no"
                        : row.again.map((place) => `${place.file}, line ${place.line}`).join("; ")}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </TableBox>
        </details>
      ))}
    </>
  );
}
