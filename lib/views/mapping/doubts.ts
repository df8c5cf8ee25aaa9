import { clockValue } from "./clock-words";
import { type ColumnFacts, clocksOf } from "./column-facts";
import type { ClockDraft, MappingDraft } from "./draft";
import { holdsTime, type TableTerms } from "./terms";

/** A question that only a person can answer, and where its answer goes. */
export type Doubt =
  | { readonly about: "decimal" }
  | {
      readonly about: "day-order";
      readonly column: string;
      readonly clocks: readonly ClockDraft[];
      /** Every feed that reads the column's days. */
      readonly at: readonly { readonly table: number; readonly field: string }[];
    }
  | {
      readonly about: "tooth";
      readonly column: string;
      readonly notations: readonly string[];
      readonly at: readonly { readonly table: number; readonly field: string }[];
    };

/** The questions that a draft leaves open; nothing is brought in before they are answered. */
export function doubtsOf(
  draft: MappingDraft,
  columns: readonly ColumnFacts[],
  terms: readonly TableTerms[],
  decimalUnsettled: boolean,
): Doubt[] {
  return [
    ...(decimalUnsettled ? [{ about: "decimal" as const }] : []),
    ...byColumn(dayOrders(draft, columns, terms)),
    ...byColumn(notations(draft, columns)),
  ];
}

type OfColumn = Exclude<Doubt, { about: "decimal" }>;

function dayOrders(
  draft: MappingDraft,
  columns: readonly ColumnFacts[],
  terms: readonly TableTerms[],
): OfColumn[] {
  return draft.tables.flatMap(({ table, fields }, place) =>
    Object.entries(fields).flatMap(([field, feed]): OfColumn[] => {
      const about = terms.find(({ name }) => name === table)?.fields.find((f) => f.name === field);
      if (!about || !holdsTime(about) || !("columns" in feed) || feed.clock) return [];
      const facts = columns.find(({ name }) => name === feed.columns[0]);
      const clocks = facts ? clocksOf(facts) : [];
      if (new Set(clocks.map(({ day }) => day)).size < 2) return [];
      const column = feed.columns[0] ?? "";
      return [
        { about: "day-order", column, clocks: different(clocks), at: [{ table: place, field }] },
      ];
    }),
  );
}

function notations(draft: MappingDraft, columns: readonly ColumnFacts[]): OfColumn[] {
  return draft.tables.flatMap(({ fields }, place) =>
    [
      ["tooth", "tooth_notation"],
      ["visit.tooth", "visit.tooth_notation"],
    ].flatMap(([tooth = "", field = ""]): OfColumn[] => {
      const feed = fields[tooth];
      if (!feed || !("columns" in feed) || feed.columns.length === 0 || fields[field]) return [];
      const facts = columns.find(({ name }) => name === feed.columns[0]);
      const fitting = Object.entries(facts?.teeth ?? {}).filter(([, fits]) => fits > 0);
      const most = Math.max(0, ...fitting.map(([, fits]) => fits));
      const best = fitting.filter(([, fits]) => fits === most).map(([notation]) => notation);
      const column = feed.columns[0] ?? "";
      const notations = best.length > 0 ? best : ["fdi", "universal", "palmer"];
      return [{ about: "tooth", column, notations, at: [{ table: place, field }] }];
    }),
  );
}

/** One question a column, however many feeds it concerns. */
function byColumn(doubts: readonly OfColumn[]): OfColumn[] {
  const merged = new Map<string, OfColumn>();
  for (const doubt of doubts) {
    const before = merged.get(doubt.column);
    merged.set(doubt.column, before ? { ...before, at: [...before.at, ...doubt.at] } : doubt);
  }
  return [...merged.values()];
}

function different(clocks: readonly ClockDraft[]): ClockDraft[] {
  return [...new Map(clocks.map((clock) => [clockValue(clock), clock])).values()];
}
