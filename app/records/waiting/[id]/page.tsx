import { notFound } from "next/navigation";
import { Link } from "@/app/_parts/link";
import { currentViewer } from "@/lib/reports/viewer";
import { waitingFilePage } from "@/lib/reports/waiting-file-page";
import { PageHead } from "../../../_parts/page-head";
import { within } from "../../../_parts/within";
import { MappingEditor } from "../../mappings/_editor/mapping-editor";
import { changeMappingAct } from "../../mappings/acts";
import { BeingLooked } from "../_page/being-looked";
import { DecimalQuestion } from "../_page/decimal-question";
import { HowWritten } from "../_page/how-written";
import { bringWaitingAct, keepWaitingMappingAct } from "../acts";

export const metadata = { title: "A file that waits" };

export default async function WaitingFilePage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const view = await within(
    "/records/waiting/[id]",
    async () => waitingFilePage(await currentViewer(), Number(id)),
    { file: id },
  );
  if (!view) notFound();
  const head = (lead: string) => (
    <PageHead
      over={<Link href="/records/waiting">Back to the files that wait</Link>}
      title={view.name}
      lead={lead}
    />
  );
  if (view.state === "looking")
    return (
      <>
        {head("")}
        <BeingLooked path={`/records/waiting/${view.id}`} />
      </>
    );
  if (view.state === "trouble") return head(view.says);
  const { decimalUnsettled } = view.editor;
  return (
    <>
      {head(
        "Say which column feeds which field. What is proposed may be wrong: look at the rows below each table. Nothing is stored before you bring the file in, and you may leave and come back.",
      )}
      <HowWritten key={view.reading} fileId={view.id} says={view.says} written={view.written} />
      {decimalUnsettled === null ? null : (
        <DecimalQuestion fileId={view.id} example={decimalUnsettled} />
      )}
      <MappingEditor
        key={`${view.id} ${view.reading}`}
        view={view.editor}
        bring={bringWaitingAct}
        keepOnly={keepWaitingMappingAct}
        keepChanged={changeMappingAct}
      />
    </>
  );
}
