import { AnsweringForm } from "@/app/_parts/answering-form";
import { Link } from "@/app/_parts/link";
import { Section } from "@/app/_parts/section";
import type { HeldRows } from "@/lib/reports/held-rows";
import { HeldTable } from "../../_page/held-table";
import { letGoAct, takeBackAct } from "../../acts";
import { MendForm } from "./mend-form";

/** The rows found, with what can be done with them: mended alike, let go, or taken back. */
export function RowsPart(props: { of: HeldRows }) {
  const { of } = props;
  const all = of.state === "held" ? "/records/held" : `/records/held?state=${of.state}`;
  return (
    <>
      {of.mend && !of.some ? (
        <Section
          id="mend"
          title="Mend them alike"
          note="You see what it would do before anything is changed, and it can be taken back."
        >
          <MendForm of={of.mend} some={false} />
          <p>
            <Link href={of.other}>Mend only some of them alike</Link>
          </p>
        </Section>
      ) : null}
      <Section
        id="rows"
        title={of.some ? "Choose rows to mend" : "Rows"}
        note={
          of.narrowed ? (
            <>
              Only {of.narrowed}. <Link href={all}>Show all</Link>
            </>
          ) : null
        }
      >
        <p>
          {of.rowsFound} found; page {of.page} of {of.pages}.
        </p>
        <Rows of={of} />
        <nav className="row" aria-label="Pages of rows">
          {of.previous ? <Link href={of.previous}>← Before</Link> : null}
          {of.next ? <Link href={of.next}>Further →</Link> : null}
        </nav>
      </Section>
    </>
  );
}

function Rows(props: { of: HeldRows }) {
  const { state, rows, mend, some, other } = props.of;
  if (rows.length === 0) return null;
  if (state === "held" && mend && some)
    return (
      <>
        <p>
          <Link href={other}>Mend all of them, or let rows go</Link>
        </p>
        <MendForm of={mend} some>
          <HeldTable rows={rows} choose />
        </MendForm>
      </>
    );
  if (state === "held")
    return (
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
        <HeldTable rows={rows} choose mend />
      </AnsweringForm>
    );
  if (state === "let-go")
    return (
      <AnsweringForm
        act={takeBackAct}
        button="Take the chosen rows back"
        label="Take rows back"
        row
      >
        <HeldTable rows={rows} choose />
      </AnsweringForm>
    );
  return <HeldTable rows={rows} mend />;
}
