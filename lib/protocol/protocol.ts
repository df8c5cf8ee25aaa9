import type { Period } from "@/lib/records/period";
import type { Criterion } from "./criterion";
import { defaults, notInForceAtFirst } from "./defaults/defaults";

/** A dated version of a criterion in a practice; it holds until the practice's next one of that criterion begins. */
export type Version = {
  readonly id: number;
  readonly practice: string;
  readonly criterion: Criterion;
  /** False: from that day on the criterion is not in force. */
  readonly inForce: boolean;
  /** First local day, YYYY-MM-DD. */
  readonly from: string;
  /** Local day on which it was written; overall scores count the criterion from then on. */
  readonly writtenOn: string;
  readonly reason: string;
  readonly by: string;
  readonly at: Date;
};

/** The versions of the practices, in the order in which they were written; before and without them the defaults hold. */
export type Protocol = { readonly versions: readonly Version[] };

/** The protocol of practices that have changed nothing. */
export const defaultProtocol: Protocol = { versions: [] };

/** A definition, and where and when it is in force. */
export type Span = {
  readonly criterion: Criterion;
  /** The practices it holds in, or all but those. */
  readonly practices: { readonly only: string } | { readonly allBut: readonly string[] };
  /** First day and the day after the last; null where it has no such end. */
  readonly from: string | null;
  readonly until: string | null;
  /** First day on which overall scores count it. */
  readonly scoredFrom: string | null;
};

/** Where and when the definitions of a criterion are in force; spans do not overlap. */
export function spansOf(protocol: Protocol, id: string): Span[] {
  const versions = protocol.versions.filter(({ criterion }) => criterion.id === id);
  const practices = [...new Set(versions.map(({ practice }) => practice))].sort();
  const first = defaultOf(id);
  const inherited: Span[] = first
    ? [
        {
          criterion: first,
          practices: { allBut: practices },
          from: null,
          until: null,
          scoredFrom: null,
        },
      ]
    : [];
  return [...inherited, ...practices.flatMap((practice) => spansIn(versions, practice, first))];
}

/** The spans of a criterion of which a day lies in the period and a practice is among those given; null is every practice. */
export function spansWithin(
  protocol: Protocol,
  id: string,
  practices: readonly string[] | null,
  period: Pick<Period, "from" | "until">,
): Span[] {
  return spansOf(protocol, id).filter(
    (span) =>
      (span.from === null || span.from < period.until) &&
      (span.until === null || span.until > period.from) &&
      reaches(span, practices),
  );
}

/** Every criterion that is or was in force somewhere, in its latest wording, the defaults in page order and then the practices' own. */
export function criteriaOf(protocol: Protocol): Criterion[] {
  const all = protocol.versions.map(({ criterion }) => criterion.id);
  const own = [...new Set(all)].filter((id) => !defaults.some((one) => one.id === id)).sort();
  return [...defaults.map(({ id }) => id), ...own].flatMap((id) => {
    const spans = spansOf(protocol, id);
    const latest = [...spans].sort((one, other) =>
      (one.from ?? "") < (other.from ?? "") ? 1 : -1,
    );
    return latest[0] ? [latest[0].criterion] : [];
  });
}

/** The criteria in force on some day of the period in some of the practices, in the wording that comes last. */
export function criteriaWithin(
  protocol: Protocol,
  practices: readonly string[] | null,
  period: Pick<Period, "from" | "until">,
): Criterion[] {
  return criteriaOf(protocol).flatMap(({ id }) => {
    const standing = standingOf(protocol, id, practices, period);
    return standing ? [standing.criterion] : [];
  });
}

/** By what a figure of a period is judged. */
export type Standing = {
  /** The definition in force last in the period; of several practices, the one first in their order. */
  readonly criterion: Criterion;
  /** Days of the period on which another version began. */
  readonly changedOn: readonly string[];
  /** The practices, or the versions, have different targets: there is none for them together. */
  readonly targetsDiffer: boolean;
};

/** The standing of a criterion; undefined where it was in force on no day of the period. */
export function standingOf(
  protocol: Protocol,
  id: string,
  practices: readonly string[] | null,
  period: Pick<Period, "from" | "until">,
): Standing | undefined {
  const spans = spansWithin(protocol, id, practices, period);
  const lastDay = (span: Span) => span.until ?? "9999-12-31";
  const [last] = [...spans].sort((one, other) => (lastDay(one) < lastDay(other) ? 1 : -1));
  if (!last) return undefined;
  return {
    criterion: last.criterion,
    changedOn: [
      ...new Set(spans.flatMap(({ from }) => (from !== null && from > period.from ? [from] : []))),
    ].sort(),
    targetsDiffer: new Set(spans.map(({ criterion }) => criterion.target)).size > 1,
  };
}

/** The default of that id; undefined where it is a practice's own. */
export function defaultOf(id: string): Criterion | undefined {
  return defaults.find((one) => one.id === id && !notInForceAtFirst.includes(id));
}

function reaches(span: Span, practices: readonly string[] | null): boolean {
  if ("only" in span.practices)
    return practices === null || practices.includes(span.practices.only);
  const { allBut } = span.practices;
  return practices === null || practices.some((one) => !allBut.includes(one));
}

function spansIn(
  versions: readonly Version[],
  practice: string,
  inherited: Criterion | undefined,
): Span[] {
  // Of two that begin on one day, the one written later holds.
  const begins = [
    ...new Map(
      versions.flatMap((one) => (one.practice === practice ? [[one.from, one]] : [])),
    ).values(),
  ].sort((one, other) => (one.from < other.from ? -1 : 1));
  const before: Span[] = inherited
    ? [
        {
          criterion: inherited,
          practices: { only: practice },
          from: null,
          until: begins[0]?.from ?? null,
          scoredFrom: null,
        },
      ]
    : [];
  const own = begins.flatMap((one, place): Span[] =>
    one.inForce
      ? [
          {
            criterion: one.criterion,
            practices: { only: practice },
            from: one.from,
            until: begins[place + 1]?.from ?? null,
            scoredFrom: [one.from, one.writtenOn].sort().at(-1) ?? one.from,
          },
        ]
      : [],
  );
  return [...before, ...own];
}
