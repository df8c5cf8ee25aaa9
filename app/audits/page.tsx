import { Link } from "@/app/_parts/link";
import { auditsPage } from "@/lib/reports/audits/list";
import { currentViewer } from "@/lib/reports/viewer";
import { AnsweringForm } from "../_parts/answering-form";
import { NothingToShow } from "../_parts/nothing-to-show";
import { PageHead } from "../_parts/page-head";
import { Section } from "../_parts/section";
import { within } from "../_parts/within";
import { ActionList } from "./_page/action-list";
import { beginAuditAct, reAuditAct } from "./acts";

export const metadata = { title: "Audits" };

export default async function AuditsPage() {
  const { audits, actions, begin } = await within("/audits", async () =>
    auditsPage(await currentViewer()),
  );
  return (
    <>
      <PageHead
        title="Audits"
        lead="From the data check to the signature, and again: a re-audit shows whether what was agreed made a difference."
        actions={
          <Link className="button" href="/audits/prepared">
            Prepared audits
          </Link>
        }
      />
      <Section id="audits" title="Audits" note="The newest first.">
        {audits.length === 0 ? (
          <NothingToShow what="No audit has been begun.">
            <p>Begin one below: it opens with what the records of the quarter come to.</p>
          </NothingToShow>
        ) : (
          <ul className="notes">
            {audits.map((one) => (
              <li key={one.id} className={one.aside ? "soft" : undefined}>
                <Link href={`/audits/${one.id}`}>{one.name}</Link>
                <div className="small soft">{one.state}</div>
                {one.next ? (
                  <AnsweringForm
                    act={reAuditAct}
                    button={`Re-audit: ${one.next}`}
                    kind="main"
                    row
                    hidden={{ audit: String(one.id) }}
                    label={`Re-audit after ${one.name}`}
                  />
                ) : null}
              </li>
            ))}
          </ul>
        )}
      </Section>
      <Section
        id="actions"
        title="Open actions"
        note="Of every audit, the first due first. They are followed until they are done or dropped."
      >
        <ActionList actions={actions} tells />
      </Section>
      <Section
        id="begin"
        title="Begin an audit"
        note="Of a quarter that is over. To repeat one, use its re-audit button instead: it keeps the scope and the trail."
      >
        <AnsweringForm
          act={beginAuditAct}
          button="Begin"
          {...(audits.length === 0 ? { kind: "main" as const } : {})}
          label="Begin an audit"
          fields={[
            { label: "Of", name: "practice", options: begin.practices },
            {
              label: "Period",
              name: "period",
              options: begin.periods,
              defaultValue: begin.period,
            },
          ]}
        />
      </Section>
    </>
  );
}
