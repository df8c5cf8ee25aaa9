import type { RunSignals } from "@/lib/statistics/run-chart";

/** Runs around a median, and what chance would draw. */
export type RunsFound = RunSignals;

/** Which chart fits the measure's kind. */
export type ChartName = "p" | "p-prime" | "u" | "g" | "t" | "xmr";

/** One point: a month, or the units or days between two events. A month without a value is a gap. */
export type TimePoint = {
  /** YYYY-MM of a month; the day of the event that ended a span between events. */
  readonly id: string;
  readonly value: number | null;
  readonly units: number;
  readonly centre: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly outside: "above" | "below" | null;
  /** The span since the last event, which has not ended. */
  readonly open?: true;
};

/** Points that are judged by one centre and one set of limits; half-open places among the points. */
export type TimeSegment = {
  readonly from: number;
  readonly to: number;
  readonly chart: ChartName;
  /** Why it has no limits, where it has none. */
  readonly why: WhyNoLimits | null;
  /** Runs around the median of the segment; null without values. */
  readonly runs: RunsFound | null;
  /** A g chart whose lower limit is 0 cannot show that events have become more frequent. */
  readonly showsWorsening: boolean;
};

export type WhyNoLimits =
  | "no-units"
  | "no-variation"
  | "no-neighbours"
  | "uneven-months"
  | "too-few-events";

/** A measure over time, oldest first, in as many segments as there are rebases and one more. */
export type TimeLine = {
  readonly points: readonly TimePoint[];
  readonly segments: readonly TimeSegment[];
};

/** A segment as it was drawn, its points with it. */
export type Drawn = {
  readonly points: readonly TimePoint[];
  readonly segment: Omit<TimeSegment, "from" | "to">;
};

/** The items in spans that begin anew where `begins` says so; never an empty span. */
export function inSegments<Item>(
  items: readonly Item[],
  begins: (item: Item, before: Item) => boolean,
): Item[][] {
  const segments: Item[][] = [];
  let before: Item | undefined;
  for (const item of items) {
    const current = segments.at(-1);
    if (current === undefined || (before !== undefined && begins(item, before)))
      segments.push([item]);
    else current.push(item);
    before = item;
  }
  return segments;
}

/** Drawn segments one after the other as one line. */
export function joined(drawn: readonly Drawn[]): TimeLine {
  let from = 0;
  const segments = drawn.map(({ points, segment }) => {
    const to = from + points.length;
    const placed = { ...segment, from, to };
    from = to;
    return placed;
  });
  return { points: drawn.flatMap(({ points }) => points), segments };
}
