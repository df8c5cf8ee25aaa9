import type { Tried } from "@/lib/reports/try-mapping";
import { TableBox } from "../../../../_parts/table-box";

/** What the mapping makes of the file: how many rows would be accepted or held, why, and the first rows as they would be. */
export function TriedView(props: { tried: Tried }) {
  const { tried } = props;
  return (
    <div className="stack" aria-live="polite">
      {tried.wrong ? <p className="form-error">{tried.wrong}</p> : null}
      {tried.missing.length > 0 ? (
        <p className="form-error">Required, and fed by nothing: {tried.missing.join(", ")}.</p>
      ) : null}
      {tried.unused.length > 0 ? (
        <p>Columns that nothing reads, and that are not kept: {tried.unused.join(", ")}.</p>
      ) : null}
      {tried.tables.map((table, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a table may be fed twice; its place tells the two apart.
        <div key={place} className="stack-tight">
          <h3>{table.table}</h3>
          <p>
            {tried.whole ? "Of the whole file" : "Of the first rows"}, {table.good} are right by
            themselves and {table.held} would be held.
          </p>
          {table.reasons.length > 0 ? (
            <ul>
              {table.reasons.map((reason) => (
                <li key={reason.words}>
                  {reason.rows} rows: {reason.words}
                </li>
              ))}
            </ul>
          ) : null}
          <TableBox label={`First rows of ${table.table} as they would be`}>
            <table>
              <thead>
                <tr>
                  <th scope="col">Line</th>
                  {table.fields.map((field) => (
                    <th key={field} scope="col">
                      {field}
                    </th>
                  ))}
                  <th scope="col">Would be</th>
                </tr>
              </thead>
              <tbody>
                {table.rows.map((row) => (
                  <tr key={row.line}>
                    <th scope="row">{row.line}</th>
                    {row.cells.map((cell, at) => (
                      <td key={table.fields[at]}>{cell}</td>
                    ))}
                    <td>{row.why === "" ? "right" : `held: ${row.why}`}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </TableBox>
        </div>
      ))}
    </div>
  );
}
