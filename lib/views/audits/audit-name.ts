import type { AuditForm } from "@/lib/records/audit-work";
import { periodNameWords } from "../period-words";

/** Of what an audit is, in words: "Audit of practice MEDLAR, April to June 2026". */
export function auditName({ practice, period }: Pick<AuditForm, "practice" | "period">): string {
  return `Audit of ${practice ? `practice ${practice}` : "the whole group"}, ${periodNameWords(period)}`;
}
