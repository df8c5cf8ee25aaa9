import { AnsweringForm } from "../../_parts/answering-form";
import { confirmCodesAct } from "./acts";

/** Codes of one kind: those confirmed as a line, those that records brought as boxes to tick. */
export function Codes(props: {
  practice: string;
  kind: "chair" | "clinician";
  title: string;
  codes: readonly { readonly code: string; readonly confirmed: boolean }[];
}) {
  const confirmed = props.codes.filter((one) => one.confirmed).map((one) => one.code);
  const fresh = props.codes.filter((one) => !one.confirmed);
  return (
    <div className="stack-tight">
      <h3>{props.title}</h3>
      <p>
        {confirmed.length > 0 ? (
          confirmed.join(", ")
        ) : (
          <span className="missing">none confirmed yet</span>
        )}
      </p>
      {fresh.length > 0 ? (
        <AnsweringForm
          act={confirmCodesAct}
          hidden={{ practice: props.practice, kind: props.kind }}
          button="Confirm those ticked"
          label={`${props.title} of ${props.practice} to be confirmed`}
        >
          <fieldset>
            <legend>Named by records, not looked at yet</legend>
            {fresh.map(({ code }) => (
              <label key={code} className="tick">
                <input type="checkbox" name="code" value={code} defaultChecked /> {code}
              </label>
            ))}
          </fieldset>
          <p className="hint">
            A code that is a typing mistake is mended in the records: undo the import, correct the
            file, bring it in again.
          </p>
        </AnsweringForm>
      ) : null}
    </div>
  );
}
