"use client";

import { useActionState } from "react";
import { Field } from "../_parts/field";
import { renewRecoveryCodesAct, type Told } from "./acts";
import { CodeList } from "./code-list";

/** Makes new recovery codes in the place of those before. */
export function RecoveryCodes() {
  const [told, renew, waiting] = useActionState<Told, FormData>(renewRecoveryCodesAct, {});
  if (told.codes) return <CodeList codes={told.codes} />;
  return (
    <form className="form" action={renew} aria-label="New recovery codes">
      <Field
        label="Password, for new recovery codes"
        name="current"
        id="recovery-current"
        type="password"
        autoComplete="current-password"
        hint="Those you have open nothing any more."
        error={told.wrong?.current}
        required
      />
      <div>
        <button type="submit" disabled={waiting}>
          {waiting ? "One moment …" : "Make new ones"}
        </button>
      </div>
    </form>
  );
}
