import type { CompositeFigure } from "@/lib/audit/composite";
import type { Figure } from "@/lib/audit/figure";
import type { AuditComputed, RecordVersions } from "./audit-content";
import { figureId, placeId } from "./figure-id";

/** What became of the records and figures of an audit since it was signed. */
export type RecordChanges = {
  /** practice/visit. */
  readonly visits: {
    readonly added: readonly string[];
    readonly changed: readonly string[];
    readonly gone: readonly string[];
  };
  /** Practices whose upkeep or codes are not what they were. */
  readonly others: readonly string[];
  /** Figures whose counts or estimate are others; one that is not there now or then has null. */
  readonly figures: readonly { readonly before: Figure | null; readonly now: Figure | null }[];
  readonly composites: readonly {
    readonly before: CompositeFigure | null;
    readonly now: CompositeFigure | null;
  }[];
  /** Criteria whose definition, or versions, are not what they were. */
  readonly criteria: readonly string[];
};

export function recordChanges(before: AuditComputed, now: AuditComputed): RecordChanges {
  return {
    visits: visitsOf(before.records, now.records),
    others: keysOf(before.records.others, now.records.others).filter(
      (key) => before.records.others[key] !== now.records.others[key],
    ),
    figures: pairs(
      figuresOf(before),
      figuresOf(now),
      (figure) => `${figureId(figure)} ${figure.period}`,
    ),
    composites: pairs(before.composites, now.composites, ({ about }) => placeId(about)),
    criteria: pairs(before.criteria, now.criteria, ({ id }) => id).flatMap(
      (pair) => (pair.now ?? pair.before)?.id ?? [],
    ),
  };
}

function visitsOf(before: RecordVersions, now: RecordVersions): RecordChanges["visits"] {
  const keys = keysOf(before.visits, now.visits);
  const was = (key: string) => before.visits[key];
  const is = (key: string) => now.visits[key];
  return {
    added: keys.filter((key) => !was(key)),
    changed: keys.filter((key) => was(key) && is(key) && was(key) !== is(key)),
    gone: keys.filter((key) => !is(key)),
  };
}

/** Those of the audit's pages: one measure, period and subject once. */
function figuresOf(computed: AuditComputed): Figure[] {
  // Of one practice the whole is the practice, and said once.
  const one = computed.practices.length === 1;
  const all = [...computed.adherence, ...computed.measures, ...computed.across].filter(
    ({ about, measure }) =>
      !one ||
      about.kind !== "group" ||
      !computed.measures.some((other) => other.measure === measure),
  );
  return [
    ...new Map(all.map((figure) => [`${figureId(figure)} ${figure.period}`, figure])).values(),
  ];
}

function pairs<Of>(
  before: readonly Of[],
  now: readonly Of[],
  keyOf: (one: Of) => string,
): { before: Of | null; now: Of | null }[] {
  const [was, is] = [before, now].map((some) => new Map(some.map((one) => [keyOf(one), one])));
  const keys = [...new Set([...(was?.keys() ?? []), ...(is?.keys() ?? [])])];
  return keys
    .map((key) => ({ before: was?.get(key) ?? null, now: is?.get(key) ?? null }))
    .filter(({ before: one, now: other }) => JSON.stringify(one) !== JSON.stringify(other));
}

function keysOf(one: object, other: object): string[] {
  return [...new Set([...Object.keys(one), ...Object.keys(other)])].sort();
}
