import { AnsweringForm } from "../_parts/answering-form";
import { Section } from "../_parts/section";
import { endSecondFactorAct } from "./acts";
import { Enrol } from "./enrol";
import { RecoveryCodes } from "./recovery-codes";

/** One's own second factor: set up, or what can be done about it. */
export function SecondFactor(props: { on: boolean; required: boolean }) {
  return (
    <Section
      id="second-factor"
      title="Second factor"
      note={
        props.required
          ? "Your role needs one: a code of six digits that a device of yours shows, new every half minute."
          : "A code of six digits that a device of yours shows, new every half minute."
      }
    >
      {props.on ? (
        <>
          <p>It is on: every sign-in asks for a code.</p>
          <RecoveryCodes />
          <AnsweringForm
            act={endSecondFactorAct}
            button="Take it away"
            label="Take the second factor away"
            fields={[
              {
                ...{ label: "Password, to take it away", name: "current", type: "password" },
                ...{ autoComplete: "current-password", required: true },
                hint: "Needed before another device can be set up.",
              },
            ]}
          />
        </>
      ) : (
        <Enrol />
      )}
    </Section>
  );
}
