import { AnsweringForm } from "@/app/_parts/answering-form";
import { Link } from "@/app/_parts/link";
import type { SharedView } from "@/lib/views/audits/shared-view";
import { confirmOwnAct, disputeOwnAct, withdrawOwnAct } from "../acts";

const kinds = [
  { value: "", words: "choose" },
  { value: "not-mine", words: "It is not mine" },
  { value: "wrong", words: "The record is wrong" },
];

/** Confirming one's records, and saying which are not one's own or wrong, while the window is open. */
export function Confirming(props: { of: SharedView }) {
  const { id, windowOpen, confirmed, disputes, visits } = props.of;
  const hidden = { audit: String(id) };
  return (
    <>
      {disputes.length > 0 ? (
        <ul className="notes">
          {disputes.map((one) => (
            <li key={one.id}>
              <Link href={one.href}>{one.visit}</Link>. {one.words}
              <div className="small soft">
                {one.answer ? `Answered: ${one.answer}` : "Not answered yet."}
              </div>
              {windowOpen ? (
                <AnsweringForm
                  act={withdrawOwnAct}
                  button="Take it back"
                  row
                  label={`Take back: ${one.visit}`}
                  hidden={{ ...hidden, dispute: String(one.id) }}
                />
              ) : null}
            </li>
          ))}
        </ul>
      ) : null}
      {confirmed ? <p>{confirmed}</p> : null}
      {windowOpen ? (
        <>
          <p>
            Look through your visits first: each opens with its records. Say below which are not
            yours or wrong; then confirm the others.
          </p>
          <AnsweringForm
            act={confirmOwnAct}
            button={confirmed ? "Take the confirmation back" : "Confirm my records"}
            {...(confirmed ? {} : { kind: "main" as const })}
            row
            label="Confirm my records"
            hidden={{ ...hidden, confirmed: confirmed ? "no" : "yes" }}
          />
          <AnsweringForm
            act={disputeOwnAct}
            button="Say so"
            label="A visit that is not mine, or wrong"
            hidden={hidden}
            fields={[
              {
                label: "Visit",
                name: "visit",
                options: [{ value: "", words: "choose" }, ...visits],
              },
              { label: "What is the matter", name: "kind", options: kinds },
              { label: "In a sentence", name: "note", required: true, maxLength: 1000 },
            ]}
          />
        </>
      ) : null}
      <details>
        <summary>Your visits in it: {visits.length}</summary>
        <ul>
          {visits.map((one) => (
            <li key={one.value}>
              <Link href={one.href}>{one.words}</Link>
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}
