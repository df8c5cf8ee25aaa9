import { notFound } from "next/navigation";
import { PrintedDocument } from "@/app/_parts/document";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { within } from "@/app/_parts/within";
import { ownSummaryDocument } from "@/lib/reports/audits/shared";
import { currentViewer } from "@/lib/reports/viewer";

export const metadata = { title: "My summary" };

export default async function MySummaryPage(props: {
  params: Promise<{ id: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const [{ id }, address] = await Promise.all([props.params, props.searchParams]);
  const document = await within(
    "/clinician/audits/[id]/summary",
    async () => ownSummaryDocument(await currentViewer(), id, address),
    { audit: id },
  );
  if (!document) notFound();
  const withReflection = address.reflection === "yes";
  return (
    <>
      <PageHead
        over={<Link href={`/clinician/audits/${id}`}>Back to the audit</Link>}
        title={document.title}
        lead={document.over}
        actions={
          <>
            <Link
              className="button"
              href={`/clinician/audits/${id}/summary${withReflection ? "" : "?reflection=yes"}`}
            >
              {withReflection ? "Leave my reflection out" : "With my reflection"}
            </Link>
            <a
              className="button main"
              href={`/api/clinician/audits/${id}/summary${withReflection ? "?reflection=yes" : ""}`}
              download
            >
              Export as PDF
            </a>
          </>
        }
      />
      <PrintedDocument of={document} />
    </>
  );
}
