import { notFound } from "next/navigation";
import { AnsweringForm } from "@/app/_parts/answering-form";
import { Link } from "@/app/_parts/link";
import { Section } from "@/app/_parts/section";
import { within } from "@/app/_parts/within";
import { scopePage } from "@/lib/reports/audits/pages";
import { currentViewer } from "@/lib/reports/viewer";
import { ActionList } from "../../_page/action-list";
import { AuditFrame } from "../../_page/audit-frame";
import { Written } from "../../_page/written";
import { chooseCriteriaAct } from "../../acts";

export const metadata = { title: "Audit: scope" };

export default async function ScopePage(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const page = await within(
    "/audits/[id]/scope",
    async () => scopePage(await currentViewer(), id),
    { audit: id },
  );
  if (!page) notFound();
  const { head, criteria } = page;
  return (
    <AuditFrame
      head={head}
      step="scope"
      lead="Of what, against which criteria, and why. Every record of the period is taken; nothing is sampled."
    >
      {page.before ? (
        <Section
          id="earlier"
          title="Last time's actions"
          note="What was agreed before, and what became of it."
        >
          <p>
            This repeats the audit of{" "}
            <Link href={`/audits/${page.before.id}`}>{page.before.words}</Link>. Before and after
            stand with the <Link href={`/audits/${head.id}/results#since`}>results</Link>.
          </p>
          <ActionList actions={page.earlier} tells />
        </Section>
      ) : null}
      <Section id="purpose" title="Purpose">
        <dl className="facts">
          <dt>Period</dt>
          <dd>{page.period}</dd>
          <dt>Practices</dt>
          <dd>{page.practices}</dd>
        </dl>
        <Written audit={head.id} of={page.purpose} open={head.open} />
      </Section>
      <Section
        id="criteria"
        title="Criteria"
        note="In force in the period. What is left out is not in the report either."
      >
        {head.open ? (
          <AnsweringForm
            act={chooseCriteriaAct}
            button="Keep the scope"
            label="Criteria of this audit"
            hidden={{ audit: String(head.id) }}
          >
            <ul className="plain-list">
              {criteria.map((one) => (
                <li key={one.id}>
                  <label className="tick">
                    <input
                      type="checkbox"
                      name={`criterion-${one.id}`}
                      value="yes"
                      defaultChecked={one.chosen}
                    />{" "}
                    {one.title} <span className="small soft">target {one.target}</span>
                  </label>
                </li>
              ))}
            </ul>
          </AnsweringForm>
        ) : (
          <ul>
            {criteria.map((one) => (
              <li key={one.id}>
                {one.title} <span className="small soft">target {one.target}</span>
              </li>
            ))}
          </ul>
        )}
      </Section>
    </AuditFrame>
  );
}
