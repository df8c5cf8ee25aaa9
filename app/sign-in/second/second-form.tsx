"use client";

import { useActionState } from "react";
import { Link } from "@/app/_parts/link";
import { Field } from "../../_parts/field";
import { enterSecond } from "../enter";

/** Works without JavaScript too. */
export function SecondForm(props: { to: string }) {
  const [answer, act, waiting] = useActionState(enterSecond, { email: "" });
  return (
    <form className="form" action={act}>
      {answer.sentence ? (
        <p className="form-error" role="alert">
          {answer.sentence}
        </p>
      ) : null}
      <input type="hidden" name="to" value={props.to} />
      <Field
        label="Code"
        name="code"
        autoComplete="one-time-code"
        hint="Six digits from your authenticator, or one of your recovery codes."
        error={answer.passwordError}
        maxLength={100}
        required
      />
      <div>
        <button type="submit" className="main" disabled={waiting}>
          {waiting ? "Looking …" : "Go on"}
        </button>
      </div>
      <p className="hint">
        Neither at hand? An administrator can take your second factor away, so that you set up
        another. <Link href="/sign-in">Begin again</Link>
      </p>
    </form>
  );
}
