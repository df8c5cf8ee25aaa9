import type { Criterion } from "@/lib/protocol/criterion";
import { type Clause, clauseOf } from "@/lib/protocol/explain";
import type { JudgedUnit } from "@/lib/protocol/judged-unit";
import { fieldsIn } from "@/lib/protocol/looked-at";
import { fieldOf, listOf } from "@/lib/protocol/vocabulary";
import { ownReasonWords } from "./protocol/code-words";
import { foundWords } from "./protocol/found-words";
import type { OwnWords } from "./protocol/own-words";
import { count } from "./quantity";

/** What the records hold of all that a criterion looks at, in words; what is not there says so. */
export function evidenceWords(
  criterion: Criterion,
  unit: Pick<JudgedUnit, "fields" | "lists"> & { readonly exception?: string | null },
  own: OwnWords = {},
): string[] {
  const looked = {
    all: [criterion.population, ...criterion.exclusions.map(({ when }) => when), criterion.met],
  };
  const fields = fieldsIn(looked).map((name) => {
    const field = fieldOf(criterion.unit, name);
    return `${field?.words.replace(/^the /, "") ?? name}: ${foundWords(field, unit.fields[name])}`;
  });
  const lists = listClauses(clauseOf(criterion.met, unit)).map((clause) =>
    listWords(criterion, clause),
  );
  const exception = unit.exception
    ? [`exception entered: ${ownReasonWords(unit.exception, own)}`]
    : [];
  return [...new Set([...fields, ...lists, ...exception])];
}

function listClauses(clause: Clause): Clause[] {
  return clause.items ? [clause] : clause.parts.flatMap(listClauses);
}

function listWords(criterion: Criterion, { condition, items = [], sum }: Clause): string {
  const name = Object.entries(condition).find(
    ([word, of]) => word === "of" || (typeof of === "string" && listOf(criterion.unit, of)),
  )?.[1];
  const list = listOf(criterion.unit, String(name));
  const rows = items.filter(({ item }) => item.row !== null).length;
  const words = list?.words.replace(/^the /, "") ?? String(name);
  const known = rows === 0 ? "none recorded" : count(rows);
  if (!("total" in condition) || sum === undefined) return `${words}: ${known}`;
  const field = list?.fields.find((one) => one.name === condition.total[0]);
  const asked = items.filter((one) => one.asked === true).length;
  return `${words}: ${known}, ${count(asked)} of them asked for, ${foundWords(field, sum)} known`;
}
