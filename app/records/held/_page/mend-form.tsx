import type { ReactNode } from "react";
import { Field } from "@/app/_parts/field";
import type { MendForm as Form } from "@/lib/reports/mend-form";

/**
 * How rows are mended alike: all that are shown, or with `some` those that are ticked among the children. It leads to a preview, and nothing
 * is changed before that.
 */
export function MendForm(props: { of: Form; some: boolean; children?: ReactNode }) {
  const { of, some } = props;
  return (
    <form
      method="get"
      action="/records/held/preview"
      className="stack"
      aria-label="Mend rows alike"
    >
      {Object.entries(of.hidden).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      {some ? <input type="hidden" name="some" value="yes" /> : null}
      {of.suggestion ? (
        <p>
          Most likely <strong>{of.suggestion}</strong> is meant; choose what is right.
        </p>
      ) : null}
      <div className="form-row">
        {of.column ? (
          <input type="hidden" name="change" value={of.column} />
        ) : (
          <Field
            label="Column"
            name="change"
            defaultValue=""
            options={[{ value: "", words: "Choose" }, ...of.columns]}
          />
        )}
        {of.hidden.found === undefined ? (
          <Field
            label="Only where the cell is"
            name="from"
            maxLength={200}
            hint="Empty: whatever it is"
          />
        ) : null}
        {of.choices.length > 0 ? (
          <Field
            label={of.label}
            name="choice"
            defaultValue=""
            options={[
              { value: "", words: "Choose" },
              ...of.choices.map((one) => ({ value: one, words: one })),
            ]}
          />
        ) : (
          <>
            <Field
              label={of.label}
              name="to"
              maxLength={200}
              {...(of.known.length > 0
                ? { list: "known-codes", hint: `Known: ${of.known.slice(0, 12).join(", ")}` }
                : {})}
            />
            {of.known.length > 0 ? (
              <datalist id="known-codes">
                {of.known.map((code) => (
                  <option key={code} value={code} />
                ))}
              </datalist>
            ) : null}
          </>
        )}
        <Field label="Reason, if there is more to say" name="reason" maxLength={300} />
      </div>
      {props.children}
      <div className="form-row">
        <button type="submit" name="how" value="to" className="main">
          {some
            ? "Show what it would do to the chosen rows"
            : `Show what it would do to ${of.rows}`}
        </button>
        {of.optional ? (
          <button type="submit" name="how" value="none">
            Make it “not recorded” …
          </button>
        ) : null}
        {of.number ? (
          <button type="submit" name="how" value="point">
            Decimal comma to point …
          </button>
        ) : null}
      </div>
    </form>
  );
}
