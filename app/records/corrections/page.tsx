import { Link } from "@/app/_parts/link";
import { type CorrectionsView, correctionsPage } from "@/lib/reports/corrections";
import { currentViewer } from "@/lib/reports/viewer";
import { Field } from "../../_parts/field";
import { PageHead } from "../../_parts/page-head";
import { Section } from "../../_parts/section";
import { within } from "../../_parts/within";
import { Differences } from "./_page/differences";
import { Made } from "./_page/made";
import { Rules } from "./_page/rules";

export const metadata = { title: "Corrections" };

type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function CorrectionsPage(props: { searchParams: Address }) {
  const address = await props.searchParams;
  const view = await within("/records/corrections", async () =>
    correctionsPage(await currentViewer(), address),
  );
  return (
    <>
      <PageHead
        over={<Link href="/records">Back to records</Link>}
        title="Corrections"
        lead="When a system sends a row again with other values, both versions stand here side by side. Until you choose, the first one counts."
      />
      <Filter of={view} />
      <Section
        id="waiting"
        title="Newer versions"
        note="What the newer version does not say keeps the old value. The old version is kept, and everything can be taken back."
      >
        {view.onlyRow ? (
          <p>
            Only the row you came from. <Link href="/records/corrections">Show all</Link>
          </p>
        ) : null}
        {view.differences.length === 0 ? (
          <p>No newer version waits for an answer.</p>
        ) : (
          <>
            <p>{view.differencesFound}</p>
            <Differences rows={view.differences} />
          </>
        )}
        <Pages
          label="Pages of newer versions"
          before={view.fewerDifferences}
          further={view.moreDifferences}
        />
      </Section>
      <Section
        id="made"
        title="Corrections made"
        note="Taking one back puts the old version back and holds the newer one again. An import cannot be undone while a correction rests on it."
      >
        <p>{view.madeFound}</p>
        {view.made.length === 0 ? null : <Made rows={view.made} />}
        <Pages label="Pages of corrections" before={view.fewerMade} further={view.moreMade} />
      </Section>
      <Section
        id="rules"
        title="By itself"
        note="Only where the newer version comes with a later import. Two versions in one import are always asked about, and so is a version that was taken back before."
      >
        {view.rules.length === 0 ? (
          <p>No practice is known yet; the first import of visits brings them.</p>
        ) : (
          <Rules of={view.rules} />
        )}
      </Section>
    </>
  );
}

function Filter(props: { of: CorrectionsView }) {
  const { rules, practice, state } = props.of;
  return (
    <form className="picker" method="get" aria-label="Practice and state">
      <div className="form-row">
        {rules.length > 1 ? (
          <Field
            label="Practice"
            name="practice"
            defaultValue={practice}
            options={[
              { value: "", words: "All practices" },
              ...rules.map((one) => ({ value: one.code, words: one.name })),
            ]}
          />
        ) : null}
        <Field
          label="Corrections made"
          name="state"
          defaultValue={state}
          options={[
            { value: "", words: "All" },
            { value: "standing", words: "Those that stand" },
            { value: "taken back", words: "Those taken back" },
          ]}
        />
        <button type="submit">Show</button>
      </div>
    </form>
  );
}

function Pages(props: { label: string; before: string | null; further: string | null }) {
  if (!props.before && !props.further) return null;
  return (
    <nav className="row" aria-label={props.label}>
      {props.before ? <Link href={props.before}>← Before</Link> : null}
      {props.further ? <Link href={props.further}>Further →</Link> : null}
    </nav>
  );
}
