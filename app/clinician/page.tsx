import { Link } from "@/app/_parts/link";
import { clinicianQuarter } from "@/lib/reports/clinician-quarter";
import { currentViewer } from "@/lib/reports/viewer";
import { unbroken } from "@/lib/views/unbroken";
import { AskedWrong } from "../_parts/asked-wrong";
import { Cautions } from "../_parts/cautions";
import { ControlFigure } from "../_parts/control-figure";
import { CusumFigure } from "../_parts/cusum-figure";
import { NothingToShow } from "../_parts/nothing-to-show";
import { OverallScores } from "../_parts/overall-scores";
import { PageHead } from "../_parts/page-head";
import { PeriodPicker } from "../_parts/period-picker";
import { Reminders } from "../_parts/reminders";
import { rightly } from "../_parts/rightly";
import { Section } from "../_parts/section";
import { within } from "../_parts/within";
import { CriterionStrip } from "./_page/criterion";
import { NoteForm } from "./_page/note-form";
import { OverallParts } from "./_page/overall-parts";
import { Strip } from "./_page/strip";
import { WorthALook } from "./_page/worth-a-look";
import { keepNoteAct } from "./acts";

export const metadata = { title: "My quarter" };

type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function ClinicianPage(props: { searchParams: Address }) {
  const address = await props.searchParams;
  const view = await within("/clinician", async () => {
    const viewer = await currentViewer();
    return rightly(() => clinicianQuarter(viewer, address));
  });
  if ("wrong" in view)
    return <AskedWrong title="My quarter" wrong={view.wrong} path="/clinician" />;
  const { tooFew, look, note } = view;
  return (
    <>
      <PageHead
        title="My quarter"
        over={view.code ? `${view.period.words}, ${view.code}` : view.period.words}
        lead="Your own work as the records have it. No other clinician's figure is on this page."
      />
      <Reminders />
      <PeriodPicker path="/clinician" periods={view.periods} />
      {view.empty ? (
        <NothingToShow what={`No visit of yours lies in ${view.period.words}.`}>
          <p>
            <Link href="/clinician">Open the last quarter you have records in</Link>, or ask the
            record keeper whether its records are in.
          </p>
        </NothingToShow>
      ) : null}
      {tooFew.length > 0 ? (
        <>
          <Section
            id="few"
            title="Too few to tell"
            note="Under ten units nothing is read into a figure."
          >
            <ul className="notes">
              {tooFew.map((one) => (
                <li key={one.title} className="note-look">
                  {one.title}: {one.words}
                </li>
              ))}
            </ul>
          </Section>
          <WorthALook of={look} />
        </>
      ) : null}
      {view.empty ? null : (
        <>
          <Section
            id="summary"
            title="In short"
            note={`Of ${view.period.words}. Where its units are few, over the four quarters up to its end: that line says so.`}
          >
            <ul className="notes">
              {view.summary.map((line) => (
                <li key={line.id} className={line.look ? "note-look" : undefined}>
                  {line.href ? <a href={line.href}>{line.title}</a> : line.title}:{" "}
                  {unbroken(line.words)}.
                </li>
              ))}
            </ul>
          </Section>
          <Section
            id="measures"
            title="My measures"
            note="Your median or rate, its interval, and the practice without you. Thick line: the plain interval; thin line: the one that allows for units of one patient resembling each other, and the one to read."
          >
            <div>
              {view.main.map((strip) => (
                <Strip key={strip.measure} of={strip} />
              ))}
            </div>
            {view.further.length > 0 ? (
              <details>
                <summary>More measures ({view.further.length})</summary>
                {view.further.map((strip) => (
                  <Strip key={strip.measure} of={strip} />
                ))}
              </details>
            ) : null}
          </Section>
          <Section
            id="criteria"
            title="My criteria"
            note="Met, not met, excepted and not recorded are never merged. Two verdicts: in these records, and beyond chance."
          >
            <div>
              {view.criteria.map((one) => (
                <CriterionStrip key={one.id} of={one} period={view.period.name} />
              ))}
            </div>
          </Section>
          <Section
            id="overall"
            title="Overall"
            note="Two scores over all criteria of the visits you led."
          >
            <OverallScores of={view.overall.view} first="Whose" />
            {view.overall.parts.length > 0 ? (
              <details>
                <summary>What they are made of</summary>
                <OverallParts of={view.overall.parts} />
              </details>
            ) : null}
          </Section>
          {tooFew.length > 0 ? null : <WorthALook of={look} />}
        </>
      )}
      {view.months.length > 0 ? (
        <Section
          id="months"
          title="My months"
          note="Two years, with the limits that chance alone seldom passes. Months without units are gaps."
        >
          <div className="columns">
            {view.months.map((one) => (
              <ControlFigure key={one.measure} chart={one.chart} />
            ))}
            {view.runningSum.cusum ? <CusumFigure chart={view.runningSum.cusum} /> : null}
          </div>
          {view.runningSum.words ? <p className="note">{view.runningSum.words}</p> : null}
        </Section>
      ) : null}
      <div className="not-printed">
        <Section id="note" title="My note">
          <NoteForm act={keepNoteAct} {...note} />
        </Section>
      </div>
      <Cautions />
    </>
  );
}
