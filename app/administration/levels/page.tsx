import { flagLevelsPage } from "@/lib/reports/flag-levels";
import { currentViewer } from "@/lib/reports/viewer";
import { AnsweringForm } from "../../_parts/answering-form";
import { PageHead } from "../../_parts/page-head";
import { Section } from "../../_parts/section";
import { within } from "../../_parts/within";
import { changeFlagLevelsAct } from "./acts";

export const metadata = { title: "Levels" };

export default async function LevelsPage() {
  const view = await within("/administration/levels", async () =>
    flagLevelsPage(await currentViewer()),
  );
  return (
    <>
      <PageHead
        title="Levels"
        lead="From which share of chance a clinician's rate is flagged. A flag is a prompt to look, never a verdict on anyone."
      />
      <Section
        id="in-force"
        title="In force"
        note="The shares are of whole pages, after allowing for how many figures a page compares."
      >
        <dl className="facts">
          <dt>Look</dt>
          <dd>under {view.look}</dd>
          <dt>Look first</dt>
          <dd>under {view.lookFirst}</dd>
          <dt>What it promises</dt>
          <dd>{view.promise}</dd>
          <dt>Why</dt>
          <dd>{view.reason}</dd>
        </dl>
      </Section>
      <Section id="change" title="Change">
        {view.mayChange ? (
          <AnsweringForm
            act={changeFlagLevelsAct}
            button="Put in force"
            label="Change the levels"
            fields={[
              {
                label: "Look, per cent",
                name: "look",
                defaultValue: view.fields.look,
                inputMode: "decimal",
                required: true,
                hint: "Higher flags more and finds more by chance. Between 0.1 and 20.",
              },
              {
                label: "Look first, per cent",
                name: "lookFirst",
                defaultValue: view.fields.lookFirst,
                inputMode: "decimal",
                required: true,
                hint: "The stricter of the two. Between 0.01 and 5.",
              },
              {
                label: "Reason",
                name: "reason",
                required: true,
                maxLength: 500,
                hint: "It stands beside the levels and is kept.",
              },
            ]}
          />
        ) : (
          <p>
            The levels hold for every practice, so only an administrator of all practices may change
            them.
          </p>
        )}
      </Section>
      {view.before.length > 0 ? (
        <Section id="before" title="Before" note="The latest first.">
          <ul>
            {view.before.map((one) => (
              <li key={one.id}>{one.words}</li>
            ))}
          </ul>
        </Section>
      ) : null}
    </>
  );
}
