import { TableBox } from "@/app/_parts/table-box";
import type { TestedTable, TestView } from "@/lib/views/mapping/test-view";

/** What a test of the whole file found, or how far it is. */
export function TestPart(props: { test: TestView; isOfThis: boolean }) {
  const { test } = props;
  if (test.state === "none") return null;
  return (
    <div className={props.isOfThis ? "stack" : "stack editor-stale"}>
      {props.isOfThis ? null : (
        <p className="hint">The mapping was changed since; this is of the mapping as it was.</p>
      )}
      <div role="status">
        {test.state === "running" ? (
          <p>
            {test.says}{" "}
            {test.share === null ? null : (
              <progress aria-label="Rows read" max={1} value={test.share} />
            )}
          </p>
        ) : (
          <p className={test.state === "failed" ? "form-error" : "finding"}>{test.says}</p>
        )}
      </div>
      {test.state === "done" ? <Counts tables={test.tables} /> : null}
    </div>
  );
}

function Counts(props: { tables: readonly TestedTable[] }) {
  return (
    <>
      <TableBox label="Rows of the whole file by table">
        <table className="fold">
          <thead>
            <tr>
              <th scope="col">Table</th>
              <th scope="col" className="num">
                Right by themselves
              </th>
              <th scope="col" className="num">
                Of them the same as the row before
              </th>
              <th scope="col" className="num">
                Would be held
              </th>
            </tr>
          </thead>
          <tbody>
            {props.tables.map((table) => (
              <tr key={table.id}>
                <th scope="row">{table.heading}</th>
                <td className="num" data-label="Right by themselves">
                  {table.good}
                </td>
                <td className="num" data-label="Of them the same as the row before">
                  {table.same}
                </td>
                <td className="num" data-label="Would be held">
                  {table.held}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
      {props.tables
        .filter(({ reasons }) => reasons.length > 0)
        .map((table) => (
          <div key={table.id} className="stack-tight">
            <h3>Why rows of {table.heading.toLowerCase()} would be held</h3>
            <ul>
              {table.reasons.map((reason) => (
                <li key={reason.id}>
                  <strong>{reason.rows}</strong> {reason.rows === "1" ? "row" : "rows"}:{" "}
                  {reason.field}: {reason.says}{" "}
                  <span className="soft">({reason.examples.join("; ")})</span>
                </li>
              ))}
            </ul>
          </div>
        ))}
    </>
  );
}
