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
