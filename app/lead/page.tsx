import { leadQuarter } from "@/lib/reports/lead-quarter";
import { currentViewer } from "@/lib/reports/viewer";
import { periodWords } from "@/lib/views/period-words";
import { AskedWrong } from "../_parts/asked-wrong";
import { Cautions } from "../_parts/cautions";
import { MonthsFigure } from "../_parts/months-figure";
import { NothingToShow } from "../_parts/nothing-to-show";
import { OverallScores } from "../_parts/overall-scores";
import { PageHead } from "../_parts/page-head";
import { PeriodPicker } from "../_parts/period-picker";
import { Reminders } from "../_parts/reminders";
import { rightly } from "../_parts/rightly";
import { Section } from "../_parts/section";
import { within } from "../_parts/within";
import { AdherenceMatrix } from "./_page/adherence-matrix";
import { BeyondChance } from "./_page/beyond-chance";
import { Families } from "./_page/families";
import { FitToAudit } from "./_page/fit-to-audit";
import { NeedsALook } from "./_page/needs-a-look";

export const metadata = { title: "This quarter" };

type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function LeadPage(props: { searchParams: Address }) {
  const address = await props.searchParams;
  const page = await within("/lead", async () => {
    const viewer = await currentViewer();
    return rightly(() => leadQuarter(viewer, address));
  });
  if ("wrong" in page) return <AskedWrong title="This quarter" wrong={page.wrong} path="/lead" />;
  const { view, period, practice } = page;
  return (
    <>
      <PageHead
        title="This quarter"
        over={`${periodWords(period)}, ${practice ? `practice ${practice}` : "all practices"}`}
        lead="Whether the records are fit to audit, what needs a look, and how the work compares."
      />
      <Reminders />
      <PeriodPicker
        path="/lead"
        periods={page.periods}
        practices={page.practices}
        practice={practice}
      />
      {view.empty ? (
        <NothingToShow what="There are no records of this period.">
          <p>Choose another period, or ask the record keeper to bring its records in.</p>
        </NothingToShow>
      ) : (
        <>
          <Section
            id="fit"
            title="Are the records fit to audit?"
            note="Read this before the figures."
          >
            <FitToAudit view={view} />
          </Section>
          <Section
            id="look"
            title="What needs a look"
            note="Of practices and their records; never of a person."
          >
            <NeedsALook lines={view.look} />
          </Section>
          <Section
            id="chance"
            title="Beyond chance?"
            note="Clinicians' rates, after allowing for how many are compared. A prompt to look, never a verdict on a person."
          >
            <BeyondChance view={view.chance} />
          </Section>
          <Section
            id="criteria"
            title="Criteria"
            note="Each cell leads to the records that did not meet it. A prompt to look, never a verdict on a person."
          >
            <AdherenceMatrix of={view.matrix} />
          </Section>
          <Section
            id="overall"
            title="Overall"
            note="Two scores over all criteria at a visit; in the order of the codes, never ranked."
          >
            <OverallScores of={view.overall} first="Whose" />
          </Section>
          <Section
            id="across"
            title="Across clinicians"
            note="In the order of their codes. A difference is a prompt to look, not a verdict on anyone."
          >
            <Families families={view.families} />
          </Section>
        </>
      )}
      <Section
        id="months"
        title="Month by month"
        note="Two years up to the end of the period. Whiskers are 95 % intervals; a month without units is a gap."
      >
        <div className="charts">
          {view.months.map((chart) => (
            <MonthsFigure key={chart.title} chart={chart} />
          ))}
        </div>
      </Section>
      <Cautions />
    </>
  );
}
