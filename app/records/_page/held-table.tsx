import { Link } from "@/app/_parts/link";
import type { HeldLine } from "@/lib/views/held-lines";
import { TableBox } from "../../_parts/table-box";
import { CellList } from "../held/_page/cell-list";

/**
 * Held rows: where each came from, what was found and what would be right; with `choose` each can be ticked, with `mend` each leads to
 * a page of its own.
 */
export function HeldTable(props: { rows: readonly HeldLine[]; choose?: boolean; mend?: boolean }) {
  return (
    <TableBox label="Rows, one by one">
      <table className="fold">
        <thead>
          <tr>
            {props.choose ? <th scope="col">Choose</th> : null}
            <th scope="col">Row</th>
            <th scope="col">File and line</th>
            <th scope="col">What was found, and what would be right</th>
          </tr>
        </thead>
        <tbody>
          {props.rows.map((row) => (
            <tr key={row.id}>
              {props.choose ? (
                <td>
                  <input
                    type="checkbox"
                    name="row"
                    value={row.id}
                    aria-label={`Choose ${row.table} ${row.key}, ${row.place}`}
                  />
                </td>
              ) : null}
              <th scope="row">
                {row.table} <span className="nowrap">{row.key}</span>
                {props.mend ? (
                  <p>
                    <Link href={`/records/held/rows/${row.id}`}>
                      {row.settled ? "See" : "Mend"}
                      <span className="only-heard">
                        {" "}
                        {row.table} {row.key}, {row.place}
                      </span>
                    </Link>
                  </p>
                ) : null}
              </th>
              <td data-label="File and line">
                {row.place} <span className="soft small">(import {row.importId})</span>
              </td>
              <td data-label="Found">
                <div className="stack-tight">
                  {row.reasons.map((reason) => (
                    <p key={reason.id}>
                      <strong>{reason.column}:</strong> {reason.found}. {reason.remedy}
                    </p>
                  ))}
                  {row.changed.length > 0 ? <CellList changes={row.changed} /> : null}
                  {row.settled ? <p className="soft">{row.settled}</p> : null}
                  <details className="small">
                    <summary>
                      The row as read<span className="only-heard"> ({row.place})</span>
                    </summary>
                    <p>
                      {row.cells.map((cell) => (
                        <span key={cell.column}>
                          {cell.column} <code>{cell.value}</code>
                          {"; "}
                        </span>
                      ))}
                    </p>
                  </details>
                </div>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
