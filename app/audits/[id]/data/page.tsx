import { notFound } from "next/navigation";
import { CompletenessTable } from "@/app/_parts/completeness-table";
import { Link } from "@/app/_parts/link";
import { Section } from "@/app/_parts/section";

import { within } from "@/app/_parts/within";
import { WeekTable } from "@/app/lead/_page/week-table";
import { dataPage } from "@/lib/reports/audits/pages";
import { currentViewer } from "@/lib/reports/viewer";
import { unbroken } from "@/lib/views/unbroken";
import { AuditFrame } from "../../_page/audit-frame";
import { Written } from "../../_page/written";

export const metadata = { title: "Audit: data check" };

export default async function DataPage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const page = await within("/audits/[id]/data", async () => dataPage(await currentViewer(), id), {
    audit: id,
  });
  if (!page) notFound();
  const { head, view, fields } = page;
  return (
    <AuditFrame
      head={head}
      step="data"
      lead="Are the records fit to audit? What has to be settled stops the audit; the rest is noted and printed with it."
    >
      <Section id="findings" title="What was found">
        {view.findings.length === 0 ? (
          <p>Nothing that has to be settled or noted.</p>
        ) : (
          view.findings.map((one, place) => (
            <div key={one.id} className="stack-tight">
              <h3>{one.kind === "settle" ? "To be settled" : "To be noted"}</h3>
              <p>{unbroken(one.words)}</p>
              {one.kind === "note" && fields[place] ? (
                <Written
                  audit={head.id}
                  of={{
                    ...fields[place],
                    hint: "What explains it, or what is done about it: one sentence is enough.",
                  }}
                  open={head.open}
                  rows={2}
                />
              ) : null}
            </div>
          ))
        )}
        <Written audit={head.id} of={page.data} open={head.open} rows={2} />
      </Section>
      <Section id="weeks" title="Visits by chair and week">
        <WeekTable grid={view.weeks} />
      </Section>
      <Section id="completeness" title="Completeness of each measure">
        <CompletenessTable lines={view.completeness} />
        <p className="small soft">
          Rows counted: {view.counts.map((one) => `${one.table} ${one.rows}`).join(", ")}.{" "}
          <Link href="/lead#fit">The lead&apos;s page</Link> leads to the records themselves.
        </p>
      </Section>
    </AuditFrame>
  );
}
