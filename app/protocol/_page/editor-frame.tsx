import { notFound } from "next/navigation";
import { Link } from "@/app/_parts/link";
import { editorPage } from "@/lib/reports/protocol/editor-page";
import { currentViewer } from "@/lib/reports/viewer";
import { criterionAddress } from "@/lib/views/protocol/criterion-address";
import { AskedWrong } from "../../_parts/asked-wrong";
import { Cautions } from "../../_parts/cautions";
import { PageHead } from "../../_parts/page-head";
import { rightly } from "../../_parts/rightly";
import { within } from "../../_parts/within";
import { Editor } from "../_editor/editor";

/** The editor on a page of its own; without a criterion for a new one. */
export async function EditorFrame(props: {
  id: string | null;
  address: Record<string, string | string[] | undefined>;
}) {
  const { id } = props;
  const page = await within("/protocol/new", async () => {
    const viewer = await currentViewer();
    return rightly(async () => ({ view: await editorPage(viewer, id, props.address) }));
  });
  if ("wrong" in page) return <AskedWrong title="Change" wrong={page.wrong} path="/protocol" />;
  const { view } = page;
  if (!view) notFound();
  const back =
    id === null
      ? `/protocol?practice=${encodeURIComponent(view.practice)}`
      : criterionAddress(id, view.practice);
  return (
    <>
      <PageHead
        title={view.title}
        over={
          <>
            <Link href={back}>{id === null ? "Protocol" : "The criterion as it is"}</Link>
            {` · ${view.practices.find(({ code }) => code === view.practice)?.name ?? view.practice}`}
          </>
        }
        lead="Choose what it counts and what it demands. Beside it stands how it reads and what it would have done to the last full quarter of the records. Nothing holds until you put it in force."
      />
      <Editor view={view} />
      <Cautions />
    </>
  );
}
