import type { AuditContent } from "@/lib/audit/cycle/audit-content";
import type { ClinicianNames } from "@/lib/audit/cycle/redrawn-codes";

/** What of an audit goes into its report beside its content. */
export type AuditDocumentOf = {
  readonly content: AuditContent;
  /** How clinicians are called in it. */
  readonly names: ClinicianNames;
  /** SHA-256 of what was signed, and of the figures within; null for a draft. */
  readonly fingerprints: { readonly signed: string; readonly computed: string } | null;
  /** YYYY-MM-DD. */
  readonly today: string;
};
