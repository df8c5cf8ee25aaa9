import { day } from "../day";
import { exportFormats } from "../export-format";
import { periodNameWords } from "../period-words";

/** What is prepared by itself, and what can be added. */
export type SchedulesView = {
  readonly schedules: readonly { readonly id: number; readonly words: string }[];
  readonly prepared: readonly {
    readonly id: string;
    readonly words: string;
    readonly href: string;
    readonly sha256: string;
  }[];
  readonly practices: readonly { readonly value: string; readonly words: string }[];
  readonly formats: readonly { readonly value: string; readonly words: string }[];
};

type Schedule = {
  readonly id: number;
  readonly practice: string | null;
  readonly format: string | null;
  readonly by: string;
  readonly at: string;
};
type Prepared = {
  readonly schedule: number;
  readonly period: string;
  readonly practice: string | null;
  readonly audit: number | null;
  readonly name: string | null;
  readonly sha256: string | null;
  readonly at: string;
};

export function schedulesView(
  what: "audit" | "report",
  schedules: readonly Schedule[],
  prepared: readonly Prepared[],
  practices: readonly { readonly code: string; readonly name: string }[],
  wholeGroup: boolean,
): SchedulesView {
  return {
    schedules: schedules.map((one) => ({
      id: one.id,
      words: `${whatWords(what, one)} of ${whereWords(one)}, each quarter; arranged by ${one.by} on ${day(one.at)}.`,
    })),
    prepared: prepared.map((one) => ({
      id: `${one.schedule} ${one.period}`,
      words: `${whereWords(one)}, ${periodNameWords(one.period)}: ${one.name ?? "an audit"}, ${day(one.at)}`,
      href:
        one.audit === null
          ? `/api/quality/prepared/${one.schedule}/${one.period}`
          : `/audits/${one.audit}`,
      sha256: one.sha256 ?? "",
    })),
    practices: [
      ...(wholeGroup && practices.length > 1 ? [{ value: "", words: "The whole group" }] : []),
      ...practices.map(({ code, name }) => ({ value: code, words: name })),
    ],
    formats: Object.entries(exportFormats).map(([value, words]) => ({ value, words })),
  };
}

function whatWords(what: "audit" | "report", { format }: Schedule): string {
  if (what === "audit") return "An audit";
  const known = Object.entries(exportFormats).find(([name]) => name === format);
  return `The adherence report as ${known?.[1] ?? "PDF"}`;
}

function whereWords({ practice }: Pick<Schedule, "practice">): string {
  return practice ? `practice ${practice}` : "the whole group";
}
