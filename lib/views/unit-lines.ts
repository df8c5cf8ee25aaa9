import type { Measured } from "@/lib/measures/measured";
import { measureOf } from "@/lib/measures/measures";
import { day } from "./day";
import { exceptionReasonWords, type OwnReason } from "./exception-reason";
import { explanationAddress } from "./explanation-address";
import { visitAddress } from "./lead-address";
import { count, quantity } from "./quantity";

/** A unit behind a figure, as the store lists it. */
export type UnitBehind = {
  readonly practice: string;
  readonly chair: string;
  readonly clinician: string | null;
  readonly day: string;
  readonly sessionId: string | null;
  readonly tooth: string | null;
  readonly canal: string | null;
  readonly seq: number | null;
  readonly state: string;
  readonly reason: string | null;
  readonly value: number | null;
};

/** A unit behind a figure in words. */
export type UnitLine = {
  readonly id: string;
  readonly day: string;
  /** The visit's page; null for what has no visit, as a chair on a day. */
  readonly href: string | null;
  readonly whose: string;
  readonly what: string;
  readonly state: string;
  readonly mark: "met" | "missed" | "excepted" | "missing" | null;
  /** Of a criterion: the page that says why it counts so. */
  readonly why: string | null;
};

const stateWords: Record<string, { words: string; mark: UnitLine["mark"] }> = {
  recorded: { words: "recorded", mark: null },
  met: { words: "met", mark: "met" },
  "not-met": { words: "not met", mark: "missed" },
  excepted: { words: "excepted", mark: "excepted" },
  separated: { words: "an instrument separated", mark: null },
  "no-separation": { words: "no separation", mark: null },
  "not-recorded": { words: "not recorded", mark: "missing" },
  "left-out": { words: "left out", mark: null },
};

/** The states that units of a measure can be in, for a choice; in the order in which they are asked about. */
export function statesOf({
  measure,
  criterion,
}: Measured): { readonly name: string; readonly words: string }[] {
  const names = criterion
    ? ["met", "not-met", ...(criterion.exceptions ? ["excepted"] : []), "not-recorded", "left-out"]
    : measureOf(measure).kind === "median"
      ? ["recorded", "not-recorded", "left-out"]
      : ["separated", "no-separation", "not-recorded"];
  return names.map((name) => ({ name, words: stateWords[name]?.words ?? name }));
}

/**
 * @param visits may the viewer open the page of a visit
 * @param own the practices' own reasons
 */
export function unitLine(
  { measure, criterion }: Measured,
  unit: UnitBehind,
  visits = true,
  own: readonly OwnReason[] = [],
): UnitLine {
  const { words, mark } = stateWords[unit.state] ?? { words: unit.state, mark: null };
  const value =
    unit.value === null || criterion ? null : quantity(unit.value, measureOf(measure).unit);
  return {
    id: [unit.practice, unit.chair, unit.day, unit.sessionId, unit.canal, unit.seq].join("/"),
    day: day(unit.day),
    href: unit.sessionId === null || !visits ? null : visitAddress(unit.practice, unit.sessionId),
    whose: [
      unit.clinician,
      unit.chair.startsWith(unit.practice) ? unit.chair : `${unit.practice} ${unit.chair}`,
    ]
      .filter(Boolean)
      .join(", "),
    what:
      unit.tooth === null
        ? "chair and day"
        : [
            ...(visits ? [] : [`visit ${unit.sessionId}`]),
            `tooth ${unit.tooth}`,
            unit.canal ? `canal ${unit.canal}` : "",
            unit.seq === null ? "" : `number ${unit.seq}`,
          ]
            .filter(Boolean)
            .join(", "),
    state: [
      unit.state === "recorded" && value ? value : words,
      unit.reason ? exceptionReasonWords(unit.reason, unit.practice, own) : "",
    ]
      .filter(Boolean)
      .join(": "),
    mark,
    why: criterion ? explanationAddress(criterion.id, unit) : null,
  };
}

/** "Units 26 to 50 of 412", or that there are none. */
export function pageWords(page: number, size: number, all: number): string {
  if (all === 0) return "No unit is like this.";
  const first = (page - 1) * size + 1;
  return `${count(first)} to ${count(Math.min(all, first + size - 1))} of ${count(all)}, latest first`;
}
