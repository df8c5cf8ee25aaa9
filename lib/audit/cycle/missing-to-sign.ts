import type { AuditWork } from "@/lib/records/audit-work";
import type { DataFinding } from "./data-findings";
import type { ToLookAt } from "./to-look-at";

/** What an audit still lacks before it can be signed; `about` names the finding, flag or text. */
export type Missing = {
  readonly what:
    | "settle"
    | "note"
    | "text"
    | "window"
    | "window-open"
    | "dispute"
    | "look"
    | "action";
  readonly about: string;
};

/** The texts without which an audit is not signed. */
export const neededTexts = ["purpose", "summary"] as const;

/** In the order of the steps. @param today YYYY-MM-DD */
export function missingToSign(
  work: AuditWork,
  of: { readonly findings: readonly DataFinding[]; readonly looks: readonly ToLookAt[] },
  today: string,
): Missing[] {
  const written = new Set(work.texts.map(({ key }) => key));
  const ended = new Set(work.looks.map(({ flag }) => flag));
  return [
    ...(written.has("purpose") ? [] : [{ what: "text", about: "purpose" } as const]),
    ...of.findings.flatMap(({ id, kind }): Missing[] => {
      if (kind === "settle") return [{ what: "settle", about: id }];
      return written.has(`data/${id}`) ? [] : [{ what: "note", about: id }];
    }),
    ...windowMissing(work, today),
    ...work.disputes
      .filter(({ answer }) => answer === null)
      .map(({ id }): Missing => ({ what: "dispute", about: String(id) })),
    ...of.looks
      .filter(({ id }) => !ended.has(id))
      .map(({ id }): Missing => ({ what: "look", about: id })),
    ...(work.actions.length > 0 || written.has("no-actions")
      ? []
      : [{ what: "action", about: "" } as const]),
    ...(written.has("summary") ? [] : [{ what: "text", about: "summary" } as const]),
  ];
}

/** Is the window open on that day. */
export function windowOpen({ window }: Pick<AuditWork, "window">, today: string): boolean {
  return window !== null && window.closedAt === null && window.until >= today;
}

function windowMissing(work: AuditWork, today: string): Missing[] {
  if (work.window === null) return [{ what: "window", about: "" }];
  return windowOpen(work, today) ? [{ what: "window-open", about: work.window.until }] : [];
}
