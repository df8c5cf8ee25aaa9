import type { UnitKind } from "@/lib/protocol/criterion";
import type { Clause } from "@/lib/protocol/explain";
import { listOf } from "@/lib/protocol/vocabulary";
import { foundWords } from "./protocol/found-words";
import { count } from "./quantity";

/**
 * What is known of a total, and from how many of the items that are asked for: "13.5 mL known, from 2 of 3 deliveries; the
 * volume of the third is not recorded". Null for what is no total.
 */
export function sumWords({ condition, sum, items = [] }: Clause, unit: UnitKind): string | null {
  if (!("total" in condition) || sum === undefined) return null;
  const list = listOf(unit, condition.of);
  const fields = (list?.fields ?? []).filter(({ name }) => condition.total.includes(name));
  const written = items.filter(({ item }) => item.row !== null);
  const asked = written.filter((one) => one.asked === true);
  const open = written.filter((one) => one.asked === undefined).length;
  const whole = asked.filter(({ item }) =>
    condition.total.every((name) => item.fields[name] !== undefined),
  );
  const missing = asked.length - whole.length;
  const several = (number: number) =>
    `${count(number)} ${number === 1 ? (list?.item ?? "item") : pluralOf(list?.item ?? "item")}`;
  const from =
    asked.length === 0
      ? "none recorded is one that is asked for"
      : missing === 0
        ? `from ${several(asked.length)}`
        : `from ${count(whole.length)} of ${several(asked.length)}`;
  const known = missing > 0 || open > 0 || items.length > written.length ? " known" : "";
  return [
    `${foundWords(fields[0], sum)}${known}, ${from}`,
    ...(missing > 0
      ? [
          `${fields.map(({ words }) => words).join(" or ")} of ${whichOf(asked, whole)} is not recorded`,
        ]
      : []),
    ...(open > 0
      ? [`whether ${several(open)} more ${open === 1 ? "is" : "are"} asked for cannot be told`]
      : []),
    ...(items.length > written.length ? ["there may be more that is not recorded"] : []),
  ].join("; ");
}

const ordinals = ["first", "second", "third", "fourth", "fifth", "sixth"];

/** "the third", where it is one of few, else how many. */
function whichOf(asked: readonly object[], whole: readonly object[]): string {
  const missing = asked.flatMap((one, place) => (whole.includes(one) ? [] : [place]));
  const [only] = missing;
  const word = missing.length === 1 && asked.length > 1 && only !== undefined && ordinals[only];
  if (word) return `the ${word}`;
  return missing.length === 1 ? "it" : `${count(missing.length)}`;
}

function pluralOf(item: string): string {
  return item === "delivery" ? "deliveries" : `${item}s`;
}
