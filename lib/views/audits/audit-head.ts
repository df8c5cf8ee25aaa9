import type { Missing } from "@/lib/audit/cycle/missing-to-sign";
import type { AuditForm } from "@/lib/records/audit-work";
import { moment } from "../day";
import { auditName } from "./audit-name";
import { type StepLine, stepLines } from "./step-list";

/** How far an audit is, as it is kept. */
export type AuditState = {
  readonly restate: { readonly reason: string; readonly by: string } | null;
  readonly setAsideBy: string | null;
  readonly versions: number;
  readonly signedAt: string | null;
  readonly signedBy: string | null;
};

/** What stands above every page of an audit. */
export type AuditHead = {
  readonly id: number;
  readonly name: string;
  readonly state: string;
  readonly open: boolean;
  readonly signed: boolean;
  readonly steps: readonly StepLine[];
};

/** @param missing nothing for what is signed */
export function auditHead(
  of: AuditState & Pick<AuditForm, "id" | "practice" | "period">,
  open: boolean,
  missing: readonly Missing[],
): AuditHead {
  return {
    id: of.id,
    name: auditName(of),
    state: stateWords(of),
    open,
    signed: of.versions > 0,
    steps: stepLines(open ? missing : []),
  };
}

/** How an audit stands, in words. */
export function stateWords({
  restate,
  setAsideBy,
  versions,
  signedAt,
  signedBy,
}: AuditState): string {
  if (setAsideBy) return `Set aside by ${setAsideBy}.`;
  if (!signedAt) return "Being worked on.";
  const signed = `Signed as version ${versions} by ${signedBy} on ${moment(new Date(signedAt), "UTC")} UTC.`;
  return restate
    ? `${signed} Opened for a restated version by ${restate.by}: ${restate.reason}`
    : signed;
}
