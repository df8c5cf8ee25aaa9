import { notFound } from "next/navigation";
import { AnsweringForm } from "@/app/_parts/answering-form";
import { Section } from "@/app/_parts/section";
import { within } from "@/app/_parts/within";
import { type ActionsPage, actionsPage } from "@/lib/reports/audits/pages";
import { currentViewer } from "@/lib/reports/viewer";
import type { ActionLine } from "@/lib/views/audits/action-lines";
import { ActionList } from "../../_page/action-list";
import { AuditFrame } from "../../_page/audit-frame";
import { Written } from "../../_page/written";
import { agreeActionAct } from "../../acts";

export const metadata = { title: "Audit: actions" };

export default async function ActionsPageOfAudit(props: { params: Promise<{ id: string }> }) {
  const { id } = await props.params;
  const page = await within(
    "/audits/[id]/actions",
    async () => actionsPage(await currentViewer(), id),
    { audit: id },
  );
  if (!page) notFound();
  const { head, lines } = page;
  return (
    <AuditFrame
      head={head}
      step="actions"
      lead="What is done, why, by whom, by when, and how we will know. They stay on the pages of those concerned until they are done."
    >
      <Section id="agreed" title="Agreed">
        <ActionList actions={lines} tells />
        {head.open
          ? lines.map((line) => (
              <details key={line.id}>
                <summary>Change: {line.what}</summary>
                <ActionForm of={page} action={line} />
              </details>
            ))
          : null}
      </Section>
      {head.open ? (
        <Section id="new" title="A new action">
          <ActionForm of={page} />
        </Section>
      ) : null}
      {lines.length === 0 ? (
        <Section id="no-actions" title="No action">
          <Written audit={head.id} of={page.noActions} open={head.open} />
        </Section>
      ) : null}
    </AuditFrame>
  );
}

function ActionForm(props: { of: ActionsPage; action?: ActionLine }) {
  const { of, action } = props;
  const text = { required: true, maxLength: 1000 };
  return (
    <AnsweringForm
      key={action ? JSON.stringify(action) : "new"}
      act={agreeActionAct}
      button={action ? "Keep the change" : "Agree"}
      {...(action ? {} : { kind: "main" as const })}
      label={action ? `Change: ${action.what}` : "A new action"}
      hidden={{ audit: String(of.head.id), ...(action ? { action: String(action.id) } : {}) }}
      fields={[
        { label: "What", name: "what", defaultValue: action?.what, ...text },
        {
          label: "Why",
          name: "why",
          hint: "The finding that it answers.",
          defaultValue: action?.why,
          ...text,
        },
        {
          label: "About",
          name: "measure",
          hint: "The next audit shows before and after of this.",
          defaultValue: action?.measure,
          options: [{ value: "", words: "no single measure" }, ...of.measures],
        },
        {
          label: "Who sees to it",
          name: "owner",
          defaultValue: action?.ownerId,
          options: [{ value: "", words: "choose" }, ...of.owners],
        },
        { label: "By", name: "due", type: "date", defaultValue: action?.dueDay, required: true },
        { label: "How we will know", name: "know", defaultValue: action?.know, ...text },
      ]}
    />
  );
}
