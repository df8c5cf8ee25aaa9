import { AnsweringForm } from "@/app/_parts/answering-form";
import type { CorrectionsView } from "@/lib/reports/corrections";
import { setRuleAct } from "../acts";

const options = [
  { value: "ask", words: "Ask me each time" },
  { value: "newer", words: "The newer version stands" },
  { value: "first", words: "The first version stands, the newer one is let go" },
];

/** What each practice does with newer versions that come from now on. */
export function Rules(props: { of: CorrectionsView["rules"] }) {
  return props.of.map((practice) => (
    <AnsweringForm
      key={practice.code}
      act={setRuleAct}
      button="Save"
      row
      label={`Rule of ${practice.code}`}
      hidden={{ practice: practice.code }}
      fields={[
        {
          label: `When a newer version comes for ${practice.name}`,
          name: "rule",
          defaultValue: practice.rule,
          options,
        },
      ]}
    />
  ));
}
