import type { ReactNode } from "react";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import type { AuditHead } from "@/lib/views/audits/audit-head";
import type { AuditStep } from "@/lib/views/audits/step-list";
import { TextsOfAudit } from "./texts-of-audit";

/** What every page of an audit shares: its name, how it stands, and the steps with what each still lacks. */
export function AuditFrame(props: {
  head: AuditHead;
  step: AuditStep | "history";
  lead: string;
  children: ReactNode;
}) {
  const { head, step } = props;
  const place = head.steps.findIndex(({ path }) => path === step);
  const next = place === -1 ? undefined : head.steps[place + 1];
  const title = head.steps[place]?.title ?? "History";
  return (
    <>
      <PageHead
        over={<Link href="/audits">All audits</Link>}
        title={`${head.name}: ${title.toLowerCase()}`}
        lead={props.lead}
        actions={
          <>
            <Link className="button" href={`/audits/${head.id}/report`}>
              Report
            </Link>
            <Link className="button" href={`/audits/${head.id}/history`}>
              History
            </Link>
          </>
        }
      />
      <nav aria-label="Steps of the audit" className="audit-steps">
        <ol>
          {head.steps.map((one) => (
            <li key={one.path}>
              <Link
                href={`/audits/${head.id}/${one.path}`}
                aria-current={one.path === step ? "step" : undefined}
              >
                {one.title}
              </Link>
              {one.left ? <span className="small soft">{one.left}</span> : null}
            </li>
          ))}
        </ol>
      </nav>
      <p className="note">{head.state}</p>
      <TextsOfAudit audit={head.id} open={head.open}>
        {props.children}
      </TextsOfAudit>
      {next ? (
        <p className="not-printed steps-next">
          <Link className="button main" href={`/audits/${head.id}/${next.path}`}>
            Next: {next.title.toLowerCase()}
          </Link>
        </p>
      ) : null}
    </>
  );
}
