import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { spansIn } from "@/lib/protocol/may-begin";
import type { Protocol, Span } from "@/lib/protocol/protocol";

/** How a criterion stands in a practice on a day. */
export type CriterionState = {
  readonly id: string;
  /** The definition in force; null where none is. */
  readonly inForce: Criterion | null;
  /** First day of that definition; null where it holds from the beginning. */
  readonly since: string | null;
  /** First day of the whole time that it has been in force without a break; null where that is from the beginning. */
  readonly began: string | null;
  /** The next change: another definition, or (null) none. */
  readonly next: { readonly from: string; readonly criterion: Criterion | null } | null;
  /** The definition to read where none is in force: the next, the last there was, else the one to begin with. */
  readonly latest: Criterion;
  /** Was it in force on any day up to the day before. */
  readonly everBefore: boolean;
};

/** Every criterion of a practice, those known from the start in page order and then its own. */
export function criterionStates(
  protocol: Protocol,
  practice: string,
  today: string,
): CriterionState[] {
  const known = defaults.map(({ id }) => id);
  const own = protocol.versions.flatMap(({ criterion, practice: of }) =>
    of === practice && !known.includes(criterion.id) ? [criterion.id] : [],
  );
  return [...known, ...[...new Set(own)].sort()].flatMap(
    (id) => criterionState(protocol, { id, practice, today }) ?? [],
  );
}

/** One of them; undefined where the practice has no such criterion. */
export function criterionState(
  protocol: Protocol,
  {
    id,
    practice,
    today,
  }: { readonly id: string; readonly practice: string; readonly today: string },
): CriterionState | undefined {
  const spans = spansIn(protocol, { id, practice }).sort((one, other) =>
    (one.from ?? "") < (other.from ?? "") ? -1 : 1,
  );
  const now = spans.find(
    ({ from, until }) => (from === null || from <= today) && (until === null || until > today),
  );
  const coming = spans.find(({ from }) => from !== null && from > today);
  const written = protocol.versions.filter(
    ({ criterion, practice: of }) => of === practice && criterion.id === id,
  );
  const latest =
    now?.criterion ??
    coming?.criterion ??
    written.at(-1)?.criterion ??
    defaults.find((one) => one.id === id);
  if (!latest) return undefined;
  const ends = now?.until ?? null;
  const next =
    ends !== null
      ? { from: ends, criterion: coming?.from === ends ? coming.criterion : null }
      : coming?.from
        ? { from: coming.from, criterion: coming.criterion }
        : null;
  return {
    id,
    inForce: now?.criterion ?? null,
    since: now?.from ?? null,
    began: began(spans, now),
    next,
    latest,
    everBefore: spans.some(({ from }) => from === null || from < today),
  };
}

/** Versions that follow each other without a day between them are one time in force. */
function began(spans: readonly Span[], now: Span | undefined): string | null {
  let first = now;
  while (first?.from) {
    const { from } = first;
    const before = spans.find(({ until }) => until === from);
    if (!before) return from;
    first = before;
  }
  return null;
}
