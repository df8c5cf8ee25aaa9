import type { AuditTextRow, AuditWork } from "@/lib/records/audit-work";
import { moment } from "../day";

/** A text of an audit as a page shows it: to be read, or typed into. */
export type TextField = {
  readonly key: string;
  readonly label: string;
  readonly hint: string;
  readonly text: string;
  readonly revision: number;
  /** Who kept it last; empty where nothing is written. */
  readonly last: string;
};

export function textField(
  { texts }: Pick<AuditWork, "texts">,
  of: Pick<TextField, "key" | "label" | "hint">,
): TextField {
  const found = texts.find(({ key }) => key === of.key);
  return {
    ...of,
    text: found?.text ?? "",
    revision: found?.revision ?? 0,
    last: found ? lastWords(found) : "",
  };
}

/** "Kept by N. N. on 3 Jul 2026, 09:10 UTC." */
export function lastWords({ by, at }: Pick<AuditTextRow, "by" | "at">): string {
  return `Kept by ${by} on ${moment(new Date(at), "UTC")} UTC.`;
}
