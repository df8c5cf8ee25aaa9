import type { Condition } from "@/lib/protocol/condition";
import type { Clause } from "@/lib/protocol/explain";
import type { ListItem } from "@/lib/protocol/judged-unit";
import { lookedAt } from "@/lib/protocol/looked-at";
import { listIn } from "@/lib/protocol/truth";
import { fieldOf, listOf } from "@/lib/protocol/vocabulary";
import type { Place } from "@/lib/records/reason";
import { byKey } from "./by-key";
import { type Sources, sourcesOfField } from "./field-source";
import { conditionWords, isWhatever } from "./protocol/condition-words";
import { foundWords } from "./protocol/found-words";
import type { OwnWords } from "./protocol/own-words";
import { count } from "./quantity";
import { sumWords } from "./sum-words";

/** A clause of a criterion with what was found, and the clauses that it is made of. */
export type ClauseLine = {
  readonly words: string;
  readonly mark: "met" | "missed" | "missing" | "none";
  readonly state: string;
  readonly found: string | null;
  readonly sources: readonly string[];
  readonly parts: readonly ClauseLine[];
  readonly items: ItemTable | null;
};

/** The items of a list that a clause looks through. */
export type ItemTable = {
  readonly label: string;
  readonly head: readonly string[];
  readonly rows: readonly {
    readonly id: string;
    readonly asked: string;
    readonly cells: readonly string[];
    readonly source: string;
  }[];
};

export type ClauseSources = Sources & {
  readonly places: ReadonlyMap<string, Place & { readonly sessionId: string | null }>;
  readonly sessionId: string;
  readonly own: OwnWords;
  /** The title of a criterion by its id. */
  readonly titleOf: (id: string) => string;
  /** The clause is part of what the criterion demands. */
  readonly isDemand: boolean;
};

/** A clause in words; null where it is true of everything. Only the demand itself is marked as met or missed. */
export function clauseLine(clause: Clause, of: ClauseSources): ClauseLine | null {
  const { condition, truth } = clause;
  if (isWhatever(condition)) return null;
  const [mark, state] =
    truth === undefined
      ? (["missing", "not recorded"] as const)
      : truth
        ? ([of.isDemand ? "met" : "none", "holds"] as const)
        : ([of.isDemand ? "missed" : "none", "does not hold"] as const);
  // What is only turned round, or taken as known, shows what was found of the clause within.
  const inner = innermost(clause);
  const { value } = inner;
  const field = value ? fieldOf(of.unit, value.field) : undefined;
  return {
    words: conditionWords(condition, { unit: of.unit, own: of.own }),
    mark,
    state,
    found: value ? foundWords(field, value.found) : sumWords(inner, of.unit),
    sources: value ? sourcesOfField(value.field, of).map(({ place }) => placeWords(place)) : [],
    parts: inner.parts.flatMap((part) => clauseLine(part, of) ?? []),
    items: inner.items ? itemTable(inner, of) : null,
  };
}

function innermost(clause: Clause): Clause {
  const [only, more] = clause.parts;
  return only && !more ? innermost(only) : clause;
}

/** What the other criteria lack, as often as they lack it. */
function gapTable(items: NonNullable<Clause["items"]>, of: ClauseSources): ItemTable {
  const named = byKey(items, ({ item }) => String(item.fields.criterion));
  return {
    label: "What lacks its evidence",
    head: ["criterion", "units"],
    rows: [...named].map(([id, some]) => ({
      id,
      asked: "yes",
      cells: [of.titleOf(id), count(some.length)],
      source: "",
    })),
  };
}

function itemTable({ condition, items = [] }: Clause, of: ClauseSources): ItemTable {
  if (isList(condition) && listIn(condition) === "gaps") return gapTable(items, of);
  const list =
    "total" in condition || isList(condition) ? listOf(of.unit, listIn(condition)) : undefined;
  const looked = new Set(lookedAt(condition).map(({ field }) => field));
  const fields = (list?.fields ?? []).filter(({ name }) => looked.has(name));
  return {
    label: list?.words ?? "the list",
    head: fields.map(({ words }) => words.replace(/^the /, "")),
    rows: items.map(({ item, asked }, place) => ({
      id: item.row ?? `unknown ${place}`,
      asked: asked === undefined ? "cannot be told" : asked ? "yes" : "no",
      cells:
        item.row === null
          ? fields.map(() => "not recorded")
          : fields.map((field) => foundWords(field, item.fields[field.name])),
      source: sourceWords(item, of),
    })),
  };
}

function isList(condition: Condition): condition is Extract<Condition, { some: string }> {
  return ["some", "every", "nextTo", "between", "after"].some((word) => word in condition);
}

function sourceWords({ row }: ListItem, { places, sessionId }: ClauseSources): string {
  if (row === null) return "no row, or one that is held: nothing is known";
  const place = places.get(row);
  if (!place) return "";
  const other =
    place.sessionId !== null && place.sessionId !== sessionId ? `, visit ${place.sessionId}` : "";
  return `${placeWords(place)}${other}`;
}

function placeWords({ file, line }: Place): string {
  return `${file}, line ${count(line)}`;
}
