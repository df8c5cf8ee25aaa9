"use client";

import { useActionState } from "react";
import { AnsweringForm } from "../_parts/answering-form";
import { Field } from "../_parts/field";
import { beginSecondFactorAct, confirmSecondFactorAct, type Told } from "./acts";
import { CodeList } from "./code-list";

/** Asks for the password, then shows the secret once and asks for its first code. */
export function Enrol() {
  const [told, begin, waiting] = useActionState<Told, FormData>(beginSecondFactorAct, {});
  const { enrolment, wrong } = told;
  if (!enrolment) {
    return (
      <form className="form" action={begin} aria-label="Set up a second factor">
        <Field
          label="Password, to set it up"
          name="current"
          id="enrol-current"
          type="password"
          autoComplete="current-password"
          error={wrong?.current}
          required
        />
        {wrong?.form ? <p className="form-error">{wrong.form}</p> : null}
        <div>
          <button type="submit" className="main" disabled={waiting}>
            {waiting ? "One moment …" : "Set it up"}
          </button>
        </div>
      </form>
    );
  }
  const { secret, codes, qr } = enrolment;
  return (
    <>
      <p>Read this with an authenticator on a device of yours, or type the secret into it.</p>
      <svg
        role="img"
        aria-label="The secret as a QR code; it stands below as text"
        width="240"
        height="240"
        viewBox={`0 0 ${qr.size} ${qr.size}`}
        shapeRendering="crispEdges"
      >
        <rect width={qr.size} height={qr.size} fill="#fff" />
        <path d={qr.path} fill="#000" />
      </svg>
      <p>
        Secret: <code>{secret}</code>
      </p>
      <CodeList codes={codes} />
      <AnsweringForm
        act={confirmSecondFactorAct}
        button="Turn it on"
        kind="main"
        label="The first code"
        fields={[
          {
            ...{ label: "Code that the device shows", name: "code", inputMode: "numeric" },
            ...{ autoComplete: "one-time-code", required: true, maxLength: 10 },
          },
        ]}
      />
    </>
  );
}
