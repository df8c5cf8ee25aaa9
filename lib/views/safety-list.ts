import { byKey } from "./by-key";
import { day } from "./day";
import { peopleCount, peopleWords } from "./people-count";
import { count } from "./quantity";
import { reasonWords } from "./reason-words";
import { openActions, type SafetyState } from "./safety-open";

/** An item as it comes from the records; no visit and no person is named. */
export type SafetyInput = SafetyState & {
  readonly kind: string;
  readonly practice: string;
  readonly day: string;
  /** How many there are. */
  readonly events: number;
};

/** One kind of item at one practice: how many, when, and how many people it concerns (masked under five). */
export type SafetyLine = {
  readonly id: string;
  readonly what: string;
  readonly practice: string;
  readonly events: string;
  readonly days: string;
  /** Empty for contacts, of which it is not asked. */
  readonly told: string;
  /** Empty for separations and contacts. */
  readonly reported: string;
  /** What is still to be done or to be written down, with how many; empty where nothing is. */
  readonly open: string;
  readonly patients: string;
};

/** What is listed apart from scores, by kind and practice: contacts, separations, then incidents. */
export function safetyLines(
  events: readonly SafetyInput[],
  patients: readonly { what: string; kind: string; practice: string; patients: number }[],
): SafetyLine[] {
  const groups = [...byKey(events, idOf)].sort(([one], [other]) => (one < other ? -1 : 1));
  return kinds.flatMap((kind) =>
    groups.flatMap(([id, some]) => {
      const [first] = some;
      if (first?.what !== kind) return [];
      const people = patients.find((one) => idOf(one) === id)?.patients ?? 0;
      return [
        {
          id,
          what: whatWords[kind] ?? reasonWords(first.kind),
          practice: first.practice,
          events: count(total(some)),
          days: [...new Set(some.map((event) => day(event.day)))].join("; "),
          told: kind === "contact" ? "" : threeWays(some, (event) => event.patientTold),
          reported: kind === "incident" ? threeWays(some, (event) => event.reported) : "",
          open: openWords(some),
          patients: peopleWords(peopleCount(people)),
        },
      ];
    }),
  );
}

const kinds = ["contact", "separation", "incident"] as const;
const whatWords: Partial<Record<SafetyState["what"], string>> = {
  contact: "hypochlorite next to chlorhexidine",
  separation: "separation, patient not known to have been told or outcome pending",
};

function idOf(of: { what: string; kind: string; practice: string }): string {
  return [of.what, of.kind, of.practice].join("/");
}

function openWords(events: readonly SafetyInput[]): string {
  const actions = byKey(
    events.flatMap((event) => openActions(event).map((action) => ({ action, event }))),
    ({ action }) => action,
  );
  return [...actions]
    .map(([action, some]) => `${action} ${count(total(some.map(({ event }) => event)))}`)
    .join(", ");
}

function threeWays(
  events: readonly SafetyInput[],
  answerOf: (event: SafetyInput) => boolean | null,
): string {
  const ways: [string, boolean | null][] = [
    ["yes", true],
    ["no", false],
    ["not recorded", null],
  ];
  return ways
    .flatMap(([words, value]) => {
      const found = total(events.filter((event) => answerOf(event) === value));
      return found === 0 ? [] : [`${words} ${count(found)}`];
    })
    .join(", ");
}

function total(events: readonly SafetyInput[]): number {
  return events.reduce((sum, event) => sum + event.events, 0);
}
