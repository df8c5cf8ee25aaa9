import { notFound } from "next/navigation";
import { Link } from "@/app/_parts/link";
import { importAnswer } from "@/lib/reports/import-answer";
import { currentViewer } from "@/lib/reports/viewer";
import { AnsweringForm } from "../../../_parts/answering-form";
import { PageHead } from "../../../_parts/page-head";
import { Section } from "../../../_parts/section";
import { within } from "../../../_parts/within";
import { HeldTable } from "../../_page/held-table";
import { undoAct } from "../../acts";
import { BrokenOff } from "./broken-off";
import { FileTable } from "./file-table";
import { Running } from "./running";

export const metadata = { title: "Import" };

export default async function ImportPage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const view = await within(
    "/records/imports/[id]",
    async () => importAnswer(await currentViewer(), Number(id)),
    { import: id },
  );
  if (!view) notFound();
  const { import: one, held } = view;
  const running = one.state === "running";
  return (
    <>
      <PageHead
        over={<Link href="/records">Back to records</Link>}
        title={`Import ${one.id}`}
        lead={`Begun ${one.at}, by ${one.by}.`}
      />
      <p className="finding" role="status">
        {one.stateWords}
      </p>
      {running ? <Running of={one} /> : null}
      {one.canGoOn ? <BrokenOff importId={one.id} /> : null}
      {one.files.length > 0 && !running ? (
        <Section
          id="files"
          title="Files"
          note="Every row read is accepted, repeated (already there, the same), held or let go."
        >
          <FileTable of={one} />
          {one.notKept.length > 0 ? (
            <div className="stack-tight">
              <h3>Columns not kept</h3>
              <p className="soft">
                No field of the record format takes them; their values were not written anywhere.
              </p>
              <ul>
                {one.notKept.map((file) => (
                  <li key={file.id}>
                    {file.file}: {file.columns}
                  </li>
                ))}
              </ul>
            </div>
          ) : null}
        </Section>
      ) : null}
      {one.state === "done" ? (
        <Section
          id="held"
          title="Held rows"
          note="They count in no figure until they are mended or let go."
        >
          {held.length === 0 ? (
            <p>No row of this import is held.</p>
          ) : (
            <>
              <HeldTable rows={held} mend />
              <p>
                <Link href={`/records/held?import=${one.id}`}>
                  {view.moreHeld
                    ? `All ${view.heldRows} of them, to mend or let go`
                    : "Mend these rows, or let them go"}
                </Link>
              </p>
            </>
          )}
        </Section>
      ) : null}
      {one.state === "done" ? (
        <Section id="undo" title="Undo" note="Takes the whole import back.">
          <AnsweringForm
            act={undoAct}
            button="Undo this import"
            hidden={{ import: String(one.id) }}
          >
            <p>{one.goes}</p>
            <label className="row">
              <input type="checkbox" name="sure" value="yes" required />{" "}
              <span>I want to take import {one.id} back</span>
            </label>
          </AnsweringForm>
        </Section>
      ) : null}
    </>
  );
}
