import { upkeepPage } from "@/lib/reports/upkeep-page";
import { currentViewer } from "@/lib/reports/viewer";
import { unbroken } from "@/lib/views/unbroken";
import { AskedWrong } from "../_parts/asked-wrong";
import { Cautions } from "../_parts/cautions";
import { NothingToShow } from "../_parts/nothing-to-show";
import { PageHead } from "../_parts/page-head";
import { PeriodPicker } from "../_parts/period-picker";
import { rightly } from "../_parts/rightly";
import { Section } from "../_parts/section";
import { within } from "../_parts/within";
import { Calendars } from "./_page/calendars";
import { TaskChoice } from "./_page/task-choice";

export const metadata = { title: "Upkeep" };

type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function UpkeepPage(props: { searchParams: Address }) {
  const address = await props.searchParams;
  const view = await within("/upkeep", async () => {
    const viewer = await currentViewer();
    return rightly(() => upkeepPage(viewer, address));
  });
  if ("wrong" in view) return <AskedWrong title="Upkeep" wrong={view.wrong} path="/upkeep" />;
  const { equal, unused } = view.sentences;
  return (
    <>
      <PageHead
        title="Upkeep"
        over={view.period.words}
        lead="What was written down of each chair's upkeep on the days on which its line carried irrigant."
        actions={
          <a className="button" href={view.file} download>
            Export as CSV
          </a>
        }
      />
      <PeriodPicker
        path="/upkeep"
        periods={view.periods}
        practices={view.practices}
        practice={view.practice}
        keep={{ task: view.task.name }}
      />
      <TaskChoice of={view} />
      {view.calendar.chairs.length === 0 ? (
        <NothingToShow what="No chair was in use in this period, and nothing is written down of the task.">
          <p>
            A chair is in use on a day on which a visit with continuous delivery started in it.
            Choose another period, or ask the record keeper to bring its records in.
          </p>
        </NothingToShow>
      ) : (
        <>
          <p className="finding">{unbroken(view.finding)}</p>
          <Section
            id="calendar"
            title="By chair and day"
            note="A day in use is one on which a visit with continuous delivery started in the chair. Of several devices in service the worst counts."
          >
            <Calendars of={view} />
          </Section>
          <Section
            id="seen"
            title="Seen in the log"
            note="Shown as what it is. Ten records or more in a row with the same seconds are listed; nothing is concluded from it."
          >
            {equal.length + unused.length === 0 ? (
              <p className="missing">
                No run of equal durations, and nothing done on a day on which the chair was not in
                use.
              </p>
            ) : (
              <ul className="notes">
                {[...equal, ...unused].map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
            )}
          </Section>
        </>
      )}
      <Cautions />
    </>
  );
}
