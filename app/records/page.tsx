import { Link } from "@/app/_parts/link";
import { recordsOverview } from "@/lib/reports/records-overview";
import { currentViewer } from "@/lib/reports/viewer";
import { AskedWrong } from "../_parts/asked-wrong";
import { PageHead } from "../_parts/page-head";
import { PeriodPicker } from "../_parts/period-picker";
import { rightly } from "../_parts/rightly";
import { Section } from "../_parts/section";
import { within } from "../_parts/within";
import { DropFiles } from "./_page/drop-files";
import { Imports } from "./_page/imports";
import { BenchGroups } from "./held/_page/bench-groups";

export const metadata = { title: "Records" };

type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function RecordsPage(props: { searchParams: Address }) {
  const address = await props.searchParams;
  const view = await within("/records", async () => {
    const viewer = await currentViewer();
    return rightly(() => recordsOverview(viewer, address));
  });
  if ("wrong" in view) return <AskedWrong title="Records" wrong={view.wrong} path="/records" />;
  return (
    <>
      <PageHead
        title="Records"
        lead="Bring files in, see what became of their rows, and what is still missing. There are no figures here."
      />
      <Section
        id="bring"
        title="Bring files in"
        note={
          <>
            Record files in any order, or what another system exports: where no mapping knows a file
            yet, it <Link href="/records/waiting">waits for one</Link>.{" "}
            <Link href="/records/format">What each table holds, and blank templates</Link>
          </>
        }
      >
        <DropFiles zones={view.zones} zone={view.zone} />
      </Section>
      <Section
        id="held"
        title="Held rows"
        note="They count in no figure until they are mended or let go."
      >
        {view.differences ? (
          <p>
            <Link href="/records/corrections">{view.differences}</Link> wait for an answer.
          </p>
        ) : null}
        {view.held.length === 0 ? (
          <p>No row is held.</p>
        ) : (
          <>
            <p>
              <Link href="/records/held">{view.heldRows} held in all</Link>
            </p>
            <BenchGroups groups={view.held} />
          </>
        )}
      </Section>
      <Section
        id="imports"
        title="Imports"
        note="Newest first. An import can be undone while nothing newer rests on it."
      >
        <Imports imports={view.imports} />
      </Section>
      <Section
        id="coverage"
        title="Coverage"
        note="What is usually there and did not come, by chair and day."
      >
        <PeriodPicker
          path="/records"
          periods={view.periods}
          practices={view.practices}
          practice={view.practice}
        />
        <p>{view.coverage}</p>
        <p>
          <Link href={coverageAddress(view.period.name, view.practice)}>Coverage, day by day</Link>
        </p>
      </Section>
    </>
  );
}

function coverageAddress(period: string, practice: string | undefined): string {
  return `/records/coverage?${new URLSearchParams({ period, ...(practice ? { practice } : {}) })}`;
}
