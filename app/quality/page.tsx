import { Link } from "@/app/_parts/link";
import { qualityQuarter } from "@/lib/reports/quality-quarter";
import { currentViewer } from "@/lib/reports/viewer";
import { unbroken } from "@/lib/views/unbroken";
import { AskedWrong } from "../_parts/asked-wrong";
import { Cautions } from "../_parts/cautions";
import { NothingToShow } from "../_parts/nothing-to-show";
import { OverallScores } from "../_parts/overall-scores";
import { PageHead } from "../_parts/page-head";
import { PeriodPicker } from "../_parts/period-picker";
import { Reminders } from "../_parts/reminders";
import { rightly } from "../_parts/rightly";
import { Section } from "../_parts/section";
import { within } from "../_parts/within";
import { CriteriaTable } from "./_page/criteria-table";
import { Exceptions } from "./_page/exceptions";
import { ExportsBefore } from "./_page/exports-before";
import { LineRinse } from "./_page/line-rinse";
import { Safety } from "./_page/safety";

export const metadata = { title: "Adherence" };

type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function QualityPage(props: { searchParams: Address }) {
  const address = await props.searchParams;
  const view = await within("/quality", async () => {
    const viewer = await currentViewer();
    return rightly(() => qualityQuarter(viewer, address));
  });
  if ("wrong" in view) return <AskedWrong title="Adherence" wrong={view.wrong} path="/quality" />;
  const { report } = view;
  const asked = new URLSearchParams({
    period: view.period.name,
    ...(view.practice ? { practice: view.practice } : {}),
  });
  return (
    <>
      <PageHead
        title="Adherence"
        over={`${report.period.words}, ${report.scope}`}
        lead="What the records say was done as agreed, by practice and chair."
        actions={
          <>
            <Link className="button" href="/quality/prepared">
              Prepared reports
            </Link>
            <Link className="button main" href={`/quality/report?${asked}`}>
              Preview the report
            </Link>
          </>
        }
      />
      <Reminders />
      <PeriodPicker
        path="/quality"
        periods={view.periods}
        practices={view.practices}
        practice={view.practice}
      />
      {report.criteria.every((one) => one.lines.every((line) => line.figure.population === 0)) ? (
        <NothingToShow what="There are no records of this period.">
          <p>Choose another period, or ask the record keeper to bring its records in.</p>
        </NothingToShow>
      ) : (
        <p className="finding">{unbroken(view.finding)}</p>
      )}
      <Section
        id="criteria"
        title="Criteria"
        note={`Two verdicts, never mixed: what these records say, and whether that is settled beyond chance. Records brought in up to ${report.cutOffWords}.`}
      >
        <CriteriaTable criteria={report.criteria} asked={asked.toString()} />
      </Section>
      <Section id="overall" title="Overall" note="Two scores over all criteria at a visit.">
        <OverallScores of={report.overall} first="Where" />
      </Section>
      <Section
        id="rinse"
        title="Line rinse by chair"
        note="Chairs and days on which a visit with continuous delivery started."
      >
        <LineRinse
          criterion={view.report.criteria.find((one) => one.criterion.id === "line-rinse")}
          upkeep={view.upkeep}
        />
        <p>
          <Link href={`/upkeep?${asked}`}>The upkeep calendar, with every task</Link>
        </p>
      </Section>
      <Section
        id="exceptions"
        title="Exceptions"
        note="Not met, with a coded reason; taken out of the count."
      >
        <Exceptions lines={view.exceptions} />
      </Section>
      <Section id="safety" title="Safety" note="Counts and dates only. Never scored on a person.">
        <Safety lines={view.safety} />
        <p>
          <Link href={`/safety?${asked}`}>The safety items by themselves</Link>
        </p>
      </Section>
      <Section
        id="exports"
        title="Exported before"
        note="Every export is kept with a checksum (SHA-256), by which a copy can be told from a changed one."
      >
        <ExportsBefore lines={view.exports} />
      </Section>
      <Cautions />
    </>
  );
}
