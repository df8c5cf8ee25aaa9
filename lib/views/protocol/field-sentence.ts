import type { Field } from "@/lib/protocol/field";
import { stepWords } from "./code-words";
import type { OwnWords } from "./own-words";
import { setQuantity, valueWords } from "./value-words";

/** What a field is called: "the working length", "the step “rubber dam”". */
export function fieldWords(field: Field, own: OwnWords): string {
  return isStep(field)
    ? `the step “${stepWords(field.name.slice("step/".length), own)}”`
    : field.words;
}

/** A field as a choice, before "is": "whether the canal was filled". */
export function fieldChoiceWords(field: Field, own: OwnWords): string {
  return field.kind === "flag"
    ? (recordedAs[field.name] ?? fieldWords(field, own))
    : fieldWords(field, own);
}

/** "the preparation is rotary", "the canal was filled", "the step “rubber dam” was not done". */
export function isWords(
  field: Field,
  value: string | number | boolean,
  negated: boolean,
  own: OwnWords,
): string {
  const flag = flags[field.name];
  if (flag && typeof value === "boolean") return flag[value === negated ? 1 : 0];
  const timer = field.name === "timer_reset" ? timers[String(value)] : undefined;
  if (timer) return timer[negated ? 1 : 0];
  if (isStep(field))
    return `${fieldWords(field, own)} was ${negated ? "not " : ""}${statusWords(String(value))}`;
  if (typeof value === "boolean")
    return `${fieldWords(field, own)}: ${value === negated ? "no" : "yes"}`;
  return saidOf(field, value === "" ? "…" : valueWords(field, value), negated, own);
}

/** "the irrigant is EDTA or citric acid". */
export function amongWords(
  field: Field,
  values: readonly string[],
  negated: boolean,
  own: OwnWords,
): string {
  const words = values.map((value) =>
    isStep(field) ? statusWords(value) : valueWords(field, value),
  );
  const text = joined(words, "or") || "…";
  if (isStep(field)) return `${fieldWords(field, own)} was ${negated ? "not " : ""}${text}`;
  return saidOf(field, text, negated, own);
}

/** "10 mL or more"; a limit that nobody has set says so. */
export function limitWords(
  limit: number | null,
  end: "least" | "most",
  negated: boolean,
  unit: string | undefined,
): string {
  const value = limit === null ? "a limit that is not set yet" : setQuantity(limit, unit);
  if (negated) return `${end === "least" ? "under" : "over"} ${value}`;
  if (limit === null) return `${end === "least" ? "at or over" : "at or under"} ${value}`;
  return `${value} or ${end === "least" ? "more" : "less"}`;
}

export function recordedWords(field: Field, negated: boolean, own: OwnWords): string {
  return `${recordedAs[field.name] ?? fieldWords(field, own)} is ${negated ? "not " : ""}recorded`;
}

/** A field and what is said of it: "the volume is 10 mL or more", "the tip stayed 1 mm or more short". */
export function saidOf(field: Field, words: string, negated: boolean, own: OwnWords): string {
  const template = templates[field.name];
  if (template) return template[negated ? 1 : 0].replace("{}", () => words);
  return `${fieldWords(field, own)} is ${negated ? "not " : ""}${words}`;
}

/** Words in a row: "A, B or C". */
export function joined(words: readonly string[], last: "and" | "or"): string {
  return words.length < 2
    ? (words[0] ?? "")
    : `${words.slice(0, -1).join(", ")} ${last} ${words.at(-1)}`;
}

function isStep(field: Field): boolean {
  return field.name.startsWith("step/");
}

function statusWords(status: string): string {
  return statuses[status] ?? (status || "…");
}

const statuses: Readonly<Record<string, string>> = {
  done: "done",
  "not-done": "left undone",
  "not-applicable": "not applicable",
  excepted: "excepted",
};
const recordedAs: Readonly<Record<string, string>> = {
  tip_short_mm: "how far the tip stayed short of the working length",
  patient_told: "whether the patient was told",
  filled: "whether the canal was filled",
  timer_reset: "whether the timer was started afresh",
  single_use: "whether the instrument is for single use",
  fragment_on_arrival: "whether a fragment was there on arrival",
  whole_tooth: "whether it was written down for the whole tooth",
  powered: "whether a powered instrument was used",
  continuous: "whether irrigant was delivered while a file worked",
};
/** Where "is" does not fit; the second of each is its opposite. */
const templates: Readonly<Record<string, readonly [string, string]>> = {
  length_method: ["the length was found by {}", "the length was not found by {}"],
  tip_short_mm: ["the tip stayed {} short", "the tip did not stay {} short"],
  third: ["the part lies in the third: {}", "the part does not lie in the third: {}"],
  kind: ["the instrument is {}", "the instrument is not {}"],
  management: ["the part was {}", "the part was not {}"],
  held_rows: ["the number of held rows is {}", "the number of held rows is not {}"],
  open_days: ["it stayed pending for {}", "it did not stay pending for {}"],
};
const flags: Readonly<Record<string, readonly [string, string]>> = {
  filled: ["the canal was filled", "the canal was not filled"],
  fragment_on_arrival: ["a fragment was there on arrival", "no fragment was there on arrival"],
  whole_tooth: ["it was written down for the whole tooth", "it was written down for the canal"],
  single_use: ["the instrument is for single use", "the instrument is not for single use"],
  patient_told: ["the patient was told", "the patient was not told"],
  powered: ["a powered instrument was used", "no powered instrument was used"],
  continuous: [
    "irrigant was delivered while a file worked",
    "no irrigant was delivered while a file worked",
  ],
};
const timers: Readonly<Record<string, readonly [string, string]>> = {
  yes: ["the timer was started afresh", "the timer was not started afresh, or there was none"],
  no: ["the timer was not started afresh", "the timer was started afresh, or there was none"],
  "no-timer": ["there was no timer", "there was a timer"],
};
