import { notFound } from "next/navigation";
import { PrintedDocument } from "@/app/_parts/document";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { within } from "@/app/_parts/within";
import { auditReport } from "@/lib/reports/audits/report";
import { currentViewer } from "@/lib/reports/viewer";

export const metadata = { title: "Audit report" };

const called = [
  { value: "none", words: "No clinician named" },
  { value: "redrawn", words: "By codes drawn for this report" },
  { value: "codes", words: "By their codes" },
];

export default async function ReportPage(props: {
  params: Promise<{ id: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const [{ id }, address] = await Promise.all([props.params, props.searchParams]);
  const report = await within(
    "/audits/[id]/report",
    async () => auditReport(await currentViewer(), id, address),
    { audit: id },
  );
  if (!report) notFound();
  const { document, version, versions, names } = report;
  const asked = new URLSearchParams({
    clinicians: names,
    ...(version ? { version: String(version.version) } : {}),
  });
  return (
    <>
      <PageHead
        over={<Link href={`/audits/${report.id}`}>Back to the audit</Link>}
        title={document.title}
        lead={document.over}
        actions={
          // A plain link: a file is made, and the export kept, when it is asked for and not before.
          <a className="button main" href={`/api/audits/${report.id}/report?${asked}`} download>
            Export as PDF
          </a>
        }
      />
      <form className="picker" method="get" aria-label="How clinicians are called">
        <div className="form-row">
          <div>
            <label htmlFor="report-clinicians">Clinicians</label>
            <select id="report-clinicians" name="clinicians" defaultValue={names} key={names}>
              {called.map((one) => (
                <option key={one.value} value={one.value}>
                  {one.words}
                </option>
              ))}
            </select>
          </div>
          {versions.length > 0 ? (
            <div>
              <label htmlFor="report-version">Version</label>
              <select
                id="report-version"
                name="version"
                defaultValue={version ? String(version.version) : ""}
                key={version?.version ?? "draft"}
              >
                {version ? null : <option value="">The draft</option>}
                {versions.map((one) => (
                  <option key={one} value={one}>
                    {one}
                  </option>
                ))}
              </select>
            </div>
          ) : null}
          <button type="submit">Show</button>
        </div>
      </form>
      <p className="small soft not-printed">
        Texts are printed as they were typed: see to it that they name nobody whom the reader need
        not know.
      </p>
      <PrintedDocument of={document} />
    </>
  );
}
