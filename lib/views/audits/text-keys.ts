import type { LookStep } from "@/lib/records/audit-work";

/** The texts of an audit that stand by themselves. */
export const textKeys = [
  "purpose",
  "data",
  "results",
  "no-actions",
  "summary",
  "recommendation",
] as const;
export type TextKey = (typeof textKeys)[number];

/** The text in which a finding of the data check is noted. */
export function dataTextKey(finding: string): string {
  return `data/${finding}`;
}

/** The text in which it is written what a step of a closer look found. */
export function lookTextKey(flag: string, step: LookStep): string {
  return `look/${step}/${flag}`;
}

const titles: Readonly<Record<TextKey, string>> = {
  purpose: "Why this audit",
  data: "About the records",
  results: "What the results come to",
  "no-actions": "Why no action is needed",
  summary: "Summary",
  recommendation: "Recommendation",
};

/** What a text is called in a list of all. */
export function textTitle(key: string): string {
  const known = textKeys.find((one) => one === key);
  if (known) return titles[known];
  const [kind = "", ...rest] = key.split("/");
  return kind === "data" ? `Data check: ${rest.join("/")}` : `Closer look: ${rest.join(", ")}`;
}
