import { byKey } from "./by-key";
import { day } from "./day";
import { peopleCount, peopleWords } from "./people-count";
import { count } from "./quantity";
import { reasonWords } from "./reason-words";

/** An event as it comes from the records; no person is named. */
export type SafetyInput = {
  readonly what: "incident" | "separation";
  readonly kind: string;
  readonly practice: string;
  readonly day: string;
  readonly patientTold: boolean | null;
  readonly reported: boolean | null;
};

/** One kind of event at one practice: how many, when, and how many people it concerns (masked under five). */
export type SafetyLine = {
  readonly id: string;
  readonly what: string;
  readonly practice: string;
  readonly events: string;
  readonly days: string;
  readonly told: string;
  /** Empty for separations, which have no such column. */
  readonly reported: string;
  readonly patients: string;
};

/** Incidents and separations whose patient is not known to have been told, by kind and practice. */
export function safetyLines(
  events: readonly SafetyInput[],
  patients: readonly { what: string; kind: string; practice: string; patients: number }[],
): SafetyLine[] {
  const groups = byKey(events, (event) => idOf(event));
  return [...groups].flatMap(([id, some]) => {
    const [first] = some;
    if (!first) return [];
    const people = patients.find((one) => idOf(one) === id)?.patients ?? 0;
    return [
      {
        id,
        what:
          first.what === "separation"
            ? "separation, patient not told or not recorded"
            : reasonWords(first.kind),
        practice: first.practice,
        events: count(some.length),
        days: some.map((event) => day(event.day)).join("; "),
        told: threeWays(some.map((event) => event.patientTold)),
        reported: first.what === "separation" ? "" : threeWays(some.map((event) => event.reported)),
        patients: peopleWords(peopleCount(people)),
      },
    ];
  });
}

function idOf(of: { what: string; kind: string; practice: string }): string {
  return [of.what, of.kind, of.practice].join("/");
}

function threeWays(answers: readonly (boolean | null)[]): string {
  const ways: [string, boolean | null][] = [
    ["yes", true],
    ["no", false],
    ["not recorded", null],
  ];
  return ways
    .flatMap(([words, value]) => {
      const found = answers.filter((answer) => answer === value).length;
      return found === 0 ? [] : [`${words} ${count(found)}`];
    })
    .join(", ");
}
