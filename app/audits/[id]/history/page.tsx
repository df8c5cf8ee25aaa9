import { notFound } from "next/navigation";
import { Link } from "@/app/_parts/link";
import { Section } from "@/app/_parts/section";
import { within } from "@/app/_parts/within";
import { historyPage } from "@/lib/reports/audits/history";
import { currentViewer } from "@/lib/reports/viewer";
import { unbroken } from "@/lib/views/unbroken";
import { AuditFrame } from "../../_page/audit-frame";

export const metadata = { title: "Audit: history" };

export default async function HistoryPage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const page = await within(
    "/audits/[id]/history",
    async () => historyPage(await currentViewer(), id),
    { audit: id },
  );
  if (!page) notFound();
  const { head } = page;
  return (
    <AuditFrame
      head={head}
      step="history"
      lead="What was signed, what later records would change of it, the audits before and after, and every revision of every text."
    >
      <Section id="versions" title="Signed versions">
        {page.versions.length === 0 ? <p className="missing">Not signed yet.</p> : null}
        {page.versions.map((one) => (
          <div key={one.version} className="stack-tight">
            <h3>
              <Link href={`/audits/${head.id}/report?version=${one.version}`}>{one.words}</Link>
            </h3>
            {one.reason ? <p>Restated because: {one.reason}</p> : null}
            <p className={one.changes ? "note note-look" : "note"}>{one.verified}</p>
            {one.changes ? (
              <details open>
                <summary>{unbroken(one.changes.summary)}</summary>
                <ul>
                  {[...one.changes.records, ...one.changes.figures].map((line) => (
                    <li key={line}>{unbroken(line)}</li>
                  ))}
                </ul>
              </details>
            ) : null}
            <dl className="facts small kept-as">
              <dt>SHA-256 of what was signed</dt>
              <dd>
                <code>{one.sha256}</code>
              </dd>
              <dt>SHA-256 of the figures within</dt>
              <dd>
                <code>{one.computedSha256}</code>
              </dd>
            </dl>
          </div>
        ))}
      </Section>
      <Section id="trail" title="From audit to audit">
        <ol>
          {page.trail.map((one) => (
            <li key={one.id}>
              {one.here ? one.name : <Link href={`/audits/${one.id}/history`}>{one.name}</Link>}{" "}
              <span className="small soft">{one.state}</span>
            </li>
          ))}
        </ol>
      </Section>
      <Section id="texts" title="Texts" note="Nothing that was typed is lost.">
        {page.texts.length === 0 ? <p className="missing">Nothing is written yet.</p> : null}
        {page.texts.map((one) => (
          <details key={one.key}>
            <summary>
              {one.title}: {one.revisions.length}{" "}
              {one.revisions.length === 1 ? "revision" : "revisions"}
            </summary>
            <ol reversed>
              {one.revisions.map((revision) => (
                <li key={revision.revision} value={revision.revision}>
                  {revision.text} <span className="small soft">{revision.words}</span>
                </li>
              ))}
            </ol>
          </details>
        ))}
      </Section>
    </AuditFrame>
  );
}
