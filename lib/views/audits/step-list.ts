import type { Missing } from "@/lib/audit/cycle/missing-to-sign";
import { count } from "../quantity";

/** The steps of an audit, in their order, as addresses name them. */
export const auditSteps = [
  { path: "scope", title: "Scope and criteria" },
  { path: "data", title: "Data check" },
  { path: "results", title: "Results" },
  { path: "confirming", title: "Confirming" },
  { path: "look", title: "Closer look" },
  { path: "actions", title: "Actions" },
  { path: "signature", title: "Signature" },
] as const;
export type AuditStep = (typeof auditSteps)[number]["path"];

/** A step with what it still lacks. */
export type StepLine = {
  readonly path: AuditStep;
  readonly title: string;
  /** What is still to do; empty where nothing is. */
  readonly left: string;
};

/** Which step each missing thing is done on. */
const stepOf: Readonly<Record<Missing["what"], AuditStep>> = {
  settle: "data",
  note: "data",
  text: "signature",
  window: "confirming",
  "window-open": "confirming",
  dispute: "confirming",
  look: "look",
  action: "actions",
};

export function stepLines(missing: readonly Missing[]): StepLine[] {
  return auditSteps.map(({ path, title }) => ({
    path,
    title,
    left: leftWords(
      path,
      missing.filter((one) => pathOf(one) === path),
    ),
  }));
}

/** The step on which something missing is done. */
export function pathOf({ what, about }: Missing): AuditStep {
  return what === "text" && about === "purpose" ? "scope" : stepOf[what];
}

function leftWords(path: AuditStep, missing: readonly Missing[]): string {
  const [first] = missing;
  if (!first) return "";
  const how = (what: Missing["what"]) => missing.filter((one) => one.what === what).length;
  switch (path) {
    case "scope":
      return "purpose to be written";
    case "data":
      return [
        how("settle") > 0 ? `${count(how("settle"))} to settle` : "",
        how("note") > 0 ? `${count(how("note"))} to note` : "",
      ]
        .filter(Boolean)
        .join(", ");
    case "confirming":
      return [
        how("window") > 0 ? "not opened yet" : "",
        how("window-open") > 0 ? "window open" : "",
        how("dispute") > 0 ? `${count(how("dispute"))} to answer` : "",
      ]
        .filter(Boolean)
        .join(", ");
    case "look":
      return `${count(missing.length)} to look at`;
    case "actions":
      return "none agreed yet";
    default:
      return "summary to be written";
  }
}
