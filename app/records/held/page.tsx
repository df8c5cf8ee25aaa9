import { Link } from "@/app/_parts/link";
import { type HeldRows, heldRows } from "@/lib/reports/held-rows";
import { currentViewer } from "@/lib/reports/viewer";
import { NothingToShow } from "../../_parts/nothing-to-show";
import { PageHead } from "../../_parts/page-head";
import { Section } from "../../_parts/section";
import { within } from "../../_parts/within";
import { BenchGroups } from "./_page/bench-groups";
import { RowsPart } from "./_page/rows-part";

export const metadata = { title: "Held rows" };

type Address = Promise<Record<string, string | string[] | undefined>>;

const heads: Record<HeldRows["state"], { title: string; lead: string; nothing: string }> = {
  held: {
    title: "Held rows",
    lead: "Rows that are wrong or contradict others. Mend them here, one or many alike, or let them go with a reason. Rows that wait for others join by themselves.",
    nothing: "No row is held.",
  },
  "let-go": {
    title: "Rows let go",
    lead: "Rows that somebody dropped, with the reason. They can be taken back.",
    nothing: "No row was let go.",
  },
  mended: {
    title: "Rows mended",
    lead: "Rows that were held and were accepted once somebody had mended them. They are kept as they were read.",
    nothing: "No row was mended.",
  },
  any: {
    title: "Rows of the bench",
    lead: "Rows that are held, were let go or were mended.",
    nothing: "There is no such row.",
  },
};

export default async function HeldPage(props: { searchParams: Address }) {
  const address = await props.searchParams;
  const view = await within("/records/held", async () => heldRows(await currentViewer(), address));
  const head = heads[view.state];
  return (
    <>
      <PageHead
        title={head.title}
        lead={head.lead}
        actions={
          <>
            {view.state === "held" ? (
              <Link href="/records/held?state=let-go">Rows let go</Link>
            ) : (
              <Link href="/records/held">Rows held now</Link>
            )}
            <Link href="/records/held/mends">What was mended</Link>
          </>
        }
      />
      {view.groups.length === 0 && view.rows.length === 0 ? (
        <NothingToShow what={head.nothing}>
          <Link href="/records">Back to records</Link>
        </NothingToShow>
      ) : (
        <>
          {view.groups.length > 0 && !view.narrowed.startsWith("table") ? (
            <Section
              id="reasons"
              title="By reason"
              note="Choose one to see its rows and mend them."
            >
              <BenchGroups groups={view.groups} />
              {view.groupsFound ? <p>{view.groupsFound}</p> : null}
              <nav className="row" aria-label="Pages of reasons">
                {view.previousGroups ? <Link href={view.previousGroups}>← Before</Link> : null}
                {view.nextGroups ? <Link href={view.nextGroups}>Further →</Link> : null}
              </nav>
            </Section>
          ) : null}
          <RowsPart of={view} />
        </>
      )}
    </>
  );
}
