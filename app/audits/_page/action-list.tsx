import { AnsweringForm } from "@/app/_parts/answering-form";
import { Link } from "@/app/_parts/link";
import type { ActionLine } from "@/lib/views/audits/action-lines";
import { tellActionAct } from "../acts";

const states = [
  { value: "open", words: "still open" },
  { value: "done", words: "done" },
  { value: "dropped", words: "dropped" },
];

/** Actions with what became of each; whoever may tells more. */
export function ActionList(props: {
  actions: readonly ActionLine[];
  /** Forms to tell what became of each. */
  tells?: boolean;
  /** Links to the audits are for leads. */
  unlinked?: boolean;
}) {
  if (props.actions.length === 0) return <p className="missing">None.</p>;
  return (
    <ul className="notes">
      {props.actions.map((one) => (
        <li key={one.id} className={one.late ? "note-look" : undefined}>
          <strong>{one.what}</strong>{" "}
          <span className="small soft">
            {one.owner}, by {one.due}: {one.stateWords}
          </span>
          <div className="small">
            Why: {one.why} How we will know: {one.know}{" "}
            {props.unlinked ? null : <Link href={`/audits/${one.audit}/actions`}>Its audit</Link>}
          </div>
          {one.news.map((news) => (
            <div key={news} className="small soft">
              {news}
            </div>
          ))}
          {props.tells ? (
            <details className="not-printed">
              <summary>Tell what became of it</summary>
              <AnsweringForm
                act={tellActionAct}
                button="Keep"
                label={`What became of: ${one.what}`}
                hidden={{ action: String(one.id) }}
                fields={[
                  { label: "It is", name: "state", options: states, defaultValue: one.state },
                  { label: "What was done", name: "text", required: true, maxLength: 1000 },
                ]}
              />
            </details>
          ) : null}
        </li>
      ))}
    </ul>
  );
}
