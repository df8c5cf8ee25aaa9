"use client";

import { useActionState } from "react";
import { Field } from "../_parts/field";
import { enter } from "./enter";

/** Works without JavaScript too: then the page comes back whole, with the sentence in it. */
export function SignInForm(props: { to: string }) {
  const [answer, act, waiting] = useActionState(enter, { email: "" });
  return (
    <form className="form" action={act}>
      {answer.sentence ? (
        <p className="form-error" role="alert">
          {answer.sentence}
        </p>
      ) : null}
      <input type="hidden" name="to" value={props.to} />
      <Field
        label="Email"
        name="email"
        type="email"
        autoComplete="username"
        defaultValue={answer.email}
        error={answer.emailError}
        required
      />
      <Field
        label="Password"
        name="password"
        type="password"
        autoComplete="current-password"
        error={answer.passwordError}
        required
      />
      <div>
        <button type="submit" className="main" disabled={waiting}>
          {waiting ? "Signing in …" : "Sign in"}
        </button>
      </div>
      <p className="hint">
        There is no sign-up here. An administrator adds people and sets a new password for whoever
        forgot theirs.
      </p>
    </form>
  );
}
