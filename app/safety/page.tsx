import { safetyPage } from "@/lib/reports/safety-page";
import { currentViewer } from "@/lib/reports/viewer";
import { AskedWrong } from "../_parts/asked-wrong";
import { Cautions } from "../_parts/cautions";
import { PageHead } from "../_parts/page-head";
import { PeriodPicker } from "../_parts/period-picker";
import { rightly } from "../_parts/rightly";
import { Section } from "../_parts/section";
import { within } from "../_parts/within";
import { Counts } from "./_page/counts";
import { Items } from "./_page/items";

export const metadata = { title: "Safety" };

type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function SafetyPage(props: { searchParams: Address }) {
  const address = await props.searchParams;
  const view = await within("/safety", async () => {
    const viewer = await currentViewer();
    return rightly(() => safetyPage(viewer, address));
  });
  if ("wrong" in view) return <AskedWrong title="Safety" wrong={view.wrong} path="/safety" />;
  const chosenView = view.items?.keep.view;
  return (
    <>
      <PageHead
        title={view.as === "own" ? "Safety in my work" : "Safety"}
        over={view.period.words}
        lead="What is listed one by one and never counted into a score or a rate."
      />
      <PeriodPicker
        path="/safety"
        periods={view.periods}
        practices={view.practices}
        practice={view.practice}
        {...(chosenView ? { keep: { view: chosenView } } : {})}
      />
      {view.items && view.as !== "officer" ? (
        <>
          <p className="finding">{view.items.finding}</p>
          <Items of={view.items} as={view.as} />
        </>
      ) : (
        <Counts lines={view.counts} />
      )}
      <Section id="what" title="What is listed">
        <ul className="notes">
          <li>
            Every place where hypochlorite and chlorhexidine follow each other without saline or
            water in between, among the deliveries that are recorded: by time where every delivery
            of the visit has one, else by their order within a canal. A delivery that is missing or
            held may lie in between.
          </li>
          <li>
            Every separation of which the patient is not known to have been told, or of which the
            outcome is pending; what was written down later counts.
          </li>
          <li>Every incident that is recorded.</li>
          <li>
            A line here judges nobody. What is to be reported, to whom and how soon, and what a
            patient is told, is for the local code and the practice&rsquo;s own rules.
          </li>
        </ul>
      </Section>
      <Cautions />
    </>
  );
}
