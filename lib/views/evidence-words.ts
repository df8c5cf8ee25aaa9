import type { Condition } from "@/lib/protocol/condition";
import type { Criterion } from "@/lib/protocol/criterion";
import type { Value, Values } from "@/lib/records/column";
import { decimal, duration } from "./quantity";
import { reasonWords } from "./reason-words";

/** What the records hold of each field that a criterion looks at, in words; what is not there says so. */
export function evidenceWords(criterion: Criterion, fields: Values): string[] {
  const looked = [
    ...new Set([
      ...criterion.exclusions.flatMap((one) => fieldsIn(one.when)),
      ...fieldsIn(criterion.met),
      ...fieldsIn(criterion.evidence),
    ]),
  ];
  const words = looked.map(
    (field) => `${names[field] ?? field}: ${valueWords(field, fields[field])}`,
  );
  const reason = criterion.exception === null ? undefined : fields[criterion.exception];
  return reason === undefined
    ? words
    : [...words, `exception entered: ${reasonWords(String(reason))}`];
}

function fieldsIn(condition: Condition): string[] {
  if ("field" in condition) return [condition.field];
  if ("recorded" in condition) return [condition.recorded];
  if ("all" in condition) return condition.all.flatMap(fieldsIn);
  if ("any" in condition) return condition.any.flatMap(fieldsIn);
  return fieldsIn(condition.not);
}

function valueWords(field: string, value: Value | undefined): string {
  if (value === undefined) return "not recorded";
  if (typeof value === "number")
    return field === "duration_s" ? duration(value) : `${decimal(value, 1)} mm`;
  if (typeof value === "boolean") return value ? "yes" : "no";
  return reasonWords(value);
}

const names: Record<string, string> = {
  timer_reset: "timer started afresh",
  working_length_mm: "working length",
  length_method: "how it was found",
  dam: "rubber dam",
  outcome: "visit",
  status: "the chair's task",
  duration_s: "time",
};
