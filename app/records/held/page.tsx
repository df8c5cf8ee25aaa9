import Link from "next/link";
import { heldRows } from "@/lib/reports/held-rows";
import { currentViewer } from "@/lib/reports/viewer";
import { AnsweringForm } from "../../_parts/answering-form";
import { NothingToShow } from "../../_parts/nothing-to-show";
import { PageHead } from "../../_parts/page-head";
import { Section } from "../../_parts/section";
import { within } from "../../_parts/within";
import { HeldGroups } from "../_page/held-groups";
import { HeldTable } from "../_page/held-table";
import { letGoAct, takeBackAct } from "../acts";

export const metadata = { title: "Held rows" };

type Address = Promise<Record<string, string | string[] | undefined>>;

export default async function HeldPage(props: { searchParams: Address }) {
  const address = await props.searchParams;
  const view = await within(async () => heldRows(await currentViewer(), address));
  const held = view.state === "held";
  return (
    <>
      <PageHead
        title={held ? "Held rows" : "Rows let go"}
        lead={
          held
            ? "Rows that are wrong or contradict others. Mend them at their source and bring the file in again, or let them go with a reason."
            : "Rows that somebody dropped, with the reason. They can be taken back."
        }
        actions={
          held ? (
            <Link href="/records/held?state=let-go">Rows let go</Link>
          ) : (
            <Link href="/records/held">Rows held now</Link>
          )
        }
      />
      {view.groups.length === 0 ? (
        <NothingToShow what={held ? "No row is held." : "No row was let go."}>
          <Link href="/records">Back to records</Link>
        </NothingToShow>
      ) : (
        <>
          <Section id="reasons" title="By reason" note="Choose one to see its rows.">
            <HeldGroups groups={view.groups} />
          </Section>
          <Section
            id="rows"
            title="Rows"
            note={
              view.narrowed ? (
                <>
                  Only {view.narrowed}.{" "}
                  <Link href={held ? "/records/held" : "/records/held?state=let-go"}>Show all</Link>
                </>
              ) : null
            }
          >
            <p>
              {view.rowsFound} found; page {view.page} of {view.pages}.
            </p>
            {view.rows.length === 0 ? null : held ? (
              <AnsweringForm
                act={letGoAct}
                button="Let the chosen rows go"
                label="Let rows go"
                row
                fields={[
                  {
                    label: "Reason, kept under your name",
                    name: "reason",
                    required: true,
                    maxLength: 300,
                  },
                ]}
              >
                <HeldTable rows={view.rows} choose />
              </AnsweringForm>
            ) : (
              <AnsweringForm
                act={takeBackAct}
                button="Take the chosen rows back"
                label="Take rows back"
                row
              >
                <HeldTable rows={view.rows} choose />
              </AnsweringForm>
            )}
            <nav className="row" aria-label="Pages of rows">
              {view.previous ? <Link href={view.previous}>← Before</Link> : null}
              {view.next ? <Link href={view.next}>Further →</Link> : null}
            </nav>
          </Section>
        </>
      )}
    </>
  );
}
