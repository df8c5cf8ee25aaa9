import { AnsweringForm } from "../_parts/answering-form";
import { Section } from "../_parts/section";
import { changeSecondFactorRuleAct } from "./acts";

const words = { required: "Required", "not yet": "Not yet required" } as const;

/** Whether those who see or decide the most need a second factor at the sign-in. */
export function SecondFactorRule(props: { rule: keyof typeof words; mayChange: boolean }) {
  const { rule, mayChange } = props;
  return (
    <Section
      id="second-factor"
      title="Second factor"
      note="Of administrators and clinical leads. Everybody may have one."
    >
      {mayChange ? (
        <AnsweringForm
          act={changeSecondFactorRuleAct}
          button="Set it"
          label="Second factor of administrators and clinical leads"
          fields={[
            {
              ...{ label: "At their sign-in a second factor is", name: "rule" },
              defaultValue: rule,
              options: Object.entries(words).map(([value, text]) => ({ value, words: text })),
            },
          ]}
        />
      ) : (
        <p>{words[rule]}. Only an administrator of all practices may change it.</p>
      )}
    </Section>
  );
}
