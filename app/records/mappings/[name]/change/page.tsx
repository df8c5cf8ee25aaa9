import { notFound } from "next/navigation";
import { Link } from "@/app/_parts/link";
import { mappingEditor } from "@/lib/reports/mappings-page";
import { currentViewer } from "@/lib/reports/viewer";
import { mappingAddress } from "@/lib/views/mapping/mapping-lines";
import { fromAddress } from "../../../../_parts/from-address";
import { PageHead } from "../../../../_parts/page-head";
import { within } from "../../../../_parts/within";
import { bringWaitingAct, keepWaitingMappingAct } from "../../../waiting/acts";
import { MappingEditor } from "../../_editor/mapping-editor";
import { changeMappingAct } from "../../acts";

export const metadata = { title: "Change a mapping" };

export default async function ChangeMappingPage(props: { params: Promise<{ name: string }> }) {
  const name = fromAddress((await props.params).name);
  const view = await within("/records/mappings/[name]/change", async () =>
    mappingEditor(await currentViewer(), name),
  );
  if (!view) notFound();
  return (
    <>
      <PageHead
        over={<Link href={mappingAddress(name)}>The mapping as it is</Link>}
        title={`Change ${name}`}
        lead="Without a file at hand it cannot be tried. To see what it makes of a file, bring one in whose shape is new, or let a kept mapping read a file that waits."
      />
      <MappingEditor
        view={view}
        bring={bringWaitingAct}
        keepOnly={keepWaitingMappingAct}
        keepChanged={changeMappingAct}
      />
    </>
  );
}
