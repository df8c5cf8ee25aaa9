import { notFound } from "next/navigation";
import { Link } from "@/app/_parts/link";
import { type CellField, heldRowPage } from "@/lib/reports/held-row";
import { currentViewer } from "@/lib/reports/viewer";
import { AnsweringForm } from "../../../../_parts/answering-form";
import { PageHead } from "../../../../_parts/page-head";
import { Section } from "../../../../_parts/section";
import { within } from "../../../../_parts/within";
import { HeldTable } from "../../../_page/held-table";
import { ActsTable } from "../../_page/acts-table";
import { TakeNewer } from "../../_page/take-newer";
import { mendOneAct } from "../../acts";

export const metadata = { title: "A held row" };

const states: Record<string, string> = {
  held: "It counts in no figure until it is mended or let go.",
  "let-go": "It was let go.",
  mended: "It was mended and is accepted.",
  corrected: "It was taken in place of the accepted row.",
};

export default async function HeldRowPage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const view = await within(
    "/records/held/rows/[id]",
    async () => heldRowPage(await currentViewer(), id),
    { row: id },
  );
  if (!view) notFound();
  const { row } = view;
  return (
    <>
      <PageHead
        over={<Link href="/records/held">Back to the held rows</Link>}
        title={`${row.table} ${row.key}`}
        lead={`${row.place}. ${states[view.state] ?? ""}`}
      />
      <Section id="row" title="The row">
        <HeldTable rows={[row]} />
        <TakeNewer id={row.id} kind={view.state === "held" ? row.kind : ""} />
      </Section>
      {view.fields.length > 0 ? (
        <Section
          id="mend"
          title="Mend it"
          note="Change what is wrong. It is checked again before anything is kept, and can be taken back."
        >
          <AnsweringForm
            act={mendOneAct}
            button="Check and keep"
            kind="main"
            label="Mend this row"
            hidden={{ id: row.id }}
            fields={[
              ...view.fields.map(fieldOf),
              { label: "Reason, if there is more to say", name: "reason", maxLength: 300 },
            ]}
          >
            <RightAsItStands fields={view.fields} />
          </AnsweringForm>
        </Section>
      ) : null}
      {view.acts.length > 0 ? (
        <Section id="acts" title="What was done">
          <ActsTable acts={view.acts} />
        </Section>
      ) : null}
    </>
  );
}

function fieldOf(field: CellField) {
  return {
    label: `${field.column}${field.required ? " (required)" : ""}`,
    name: field.name,
    defaultValue: field.value,
    hint: [field.wrong, field.hint].filter(Boolean).join(" "),
    ...(field.options ? { options: field.options } : { maxLength: 500, autoComplete: "off" }),
  };
}

/** Cells that were found wrong in the file, and may be right as they stand. */
function RightAsItStands(props: { fields: readonly CellField[] }) {
  const wrong = props.fields.filter((field) => field.wrong !== "" && field.value !== "");
  if (wrong.length === 0) return null;
  return (
    <fieldset>
      <legend>Only if a cell is right as it stands, in the unit named below</legend>
      {wrong.map((field) => (
        <label className="tick" key={field.name}>
          <input type="checkbox" name={`right-${field.column}`} value="yes" /> {field.column} is “
          {field.value}”
        </label>
      ))}
    </fieldset>
  );
}
