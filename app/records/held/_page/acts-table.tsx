import { AnsweringForm } from "@/app/_parts/answering-form";
import { Link } from "@/app/_parts/link";
import { TableBox } from "@/app/_parts/table-box";
import type { MendLine } from "@/lib/views/mend-lines";
import { takeMendBackAct } from "../acts";

/** What was done on the bench, each with who did it and a way to take it back. */
export function ActsTable(props: { acts: readonly MendLine[] }) {
  return (
    <TableBox label="What was mended">
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">Act</th>
            <th scope="col">Rows</th>
            <th scope="col">By whom</th>
            <th scope="col">State</th>
          </tr>
        </thead>
        <tbody>
          {props.acts.map((act) => (
            <tr key={act.id} id={`act-${act.id}`}>
              <th scope="row">
                Act {act.id}: {act.what}
                {act.reason ? <p className="soft small">{act.reason}</p> : null}
                {act.mapping ? <p className="soft small">{act.mapping}</p> : null}
              </th>
              <td data-label="Rows">
                <Link href={act.address}>
                  {act.rows} {act.rows === "1" ? "row" : "rows"}
                  <span className="only-heard"> of act {act.id}</span>
                </Link>
                <p className="soft small">{act.became}</p>
              </td>
              <td data-label="By whom">{act.who}</td>
              <td data-label="State">
                {act.takenBack ?? (
                  <AnsweringForm
                    act={takeMendBackAct}
                    button="Take back"
                    kind="plain"
                    row
                    label={`Take act ${act.id} back`}
                    hidden={{ mend: String(act.id) }}
                  />
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
