import { notFound } from "next/navigation";
import { Link } from "@/app/_parts/link";
import { mappingPage } from "@/lib/reports/mappings-page";
import { currentViewer } from "@/lib/reports/viewer";
import { AnsweringForm } from "../../../_parts/answering-form";
import { fromAddress } from "../../../_parts/from-address";
import { PageHead } from "../../../_parts/page-head";
import { Section } from "../../../_parts/section";
import { within } from "../../../_parts/within";
import { MappingTables } from "../_page/mapping-tables";
import { retireMappingAct } from "../acts";

export const metadata = { title: "A mapping" };

export default async function MappingPage(props: {
  params: Promise<{ name: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const { name } = await props.params;
  const { version } = await props.searchParams;
  const asked = typeof version === "string" ? version : undefined;
  const view = await within("/records/mappings/[name]", async () =>
    mappingPage(await currentViewer(), fromAddress(name), asked),
  );
  if (!view) notFound();
  return (
    <>
      <PageHead
        over={<Link href="/records/mappings">All mappings</Link>}
        title={view.name}
        lead={`Version ${view.version}, kept ${view.kept}. ${view.files} files were read by it.${view.retired ? " It is retired: no file is read by it unless it is named." : ""}`}
        actions={
          <>
            <a href={view.download}>Download as JSON</a>
            {view.isNewest ? <Link href={`${view.address}/change`}>Change it</Link> : null}
          </>
        }
      />
      <Section id="fits" title="Files that it fits" note="By their column names, in any order.">
        {view.says ? <p>{view.says}</p> : null}
        <p>
          Written with {view.shape}: {view.columns}.
        </p>
        <p>Time zone of its times: {view.zone}.</p>
      </Section>
      <Section id="feeds" title="What it feeds">
        <MappingTables tables={view.tables} />
      </Section>
      <Section id="versions" title="Versions" note="Old ones are kept; files read by them stay.">
        <ul>
          {view.versions.map((one) => (
            <li key={one.version}>
              {one.isShown ? (
                <strong>Version {one.version}</strong>
              ) : (
                <Link href={one.address}>Version {one.version}</Link>
              )}
              , {one.words}
            </li>
          ))}
        </ul>
      </Section>
      <Section
        id="retire"
        title={view.retired ? "Use it again" : "Retire"}
        note={view.retired ? undefined : "Files are no longer read by it of themselves."}
      >
        <AnsweringForm
          act={retireMappingAct}
          button={view.retired ? "Use it again" : "Retire it"}
          row
          label={view.retired ? "Use the mapping again" : "Retire the mapping"}
          hidden={{ name: view.name, retired: view.retired ? "no" : "yes" }}
        />
      </Section>
    </>
  );
}
