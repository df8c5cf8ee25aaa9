import type { ControlChart } from "@/lib/statistics/control-chart";
import { gChart, tChart } from "@/lib/statistics/control-chart";
import { quantile } from "@/lib/statistics/quantile";
import { runSignals } from "@/lib/statistics/run-chart";
import { type Drawn, inSegments, joined, type TimeLine } from "./over-time";

/** Where events stand among the units in order, and when. */
export type RareEvents = {
  readonly units: number;
  readonly last: string | null;
  readonly events: readonly { readonly place: number; readonly day: string }[];
};

/** Below so many events a month what lies between them is drawn, not their rate (common practice for rare events). */
export const rareBelow = 2;

type Span = { readonly day: string; readonly length: number; readonly open?: true };

/**
 * Rare events by what lies between them: units strictly between (g chart) or days (t chart). What came before the first
 * event began before the records and is no span; what came after the last has not ended and is drawn open.
 * @param rebases months (YYYY-MM) from which limits begin anew
 */
export function rareLine(
  chart: "g" | "t",
  found: RareEvents,
  rebases: readonly string[],
): TimeLine {
  const spans = chart === "g" ? unitsBetween(found) : daysBetween(found);
  const segments = inSegments(spans, (one, before) =>
    rebases.some((month) => before.day < month && month <= one.day),
  );
  return joined(segments.map((some) => drawn(chart, some)));
}

function drawn(chart: "g" | "t", spans: readonly Span[]): Drawn {
  const closed = spans.filter((span) => !span.open).map((span) => span.length);
  const open = spans.find((span) => span.open)?.length;
  const g = chart === "g" ? gChart(closed, open) : undefined;
  const found: ControlChart | undefined = chart === "g" ? g : tChart(closed, open);
  const median = quantile(closed, 0.5);
  return {
    points: spans.map((span, place) => {
      const point = found?.points[place];
      return {
        id: span.day,
        value: span.length,
        units: span.length,
        centre: found?.centre ?? null,
        lower: point?.lower ?? null,
        upper: point?.upper ?? null,
        outside: point?.outside ?? null,
        ...(span.open ? { open: true as const } : {}),
      };
    }),
    segment: {
      chart,
      why: found ? null : "too-few-events",
      runs: median === undefined ? null : runSignals(closed, median),
      showsWorsening: g?.showsWorsening ?? chart === "t",
    },
  };
}

function unitsBetween({ units, last, events }: RareEvents): Span[] {
  const closed = events
    .slice(1)
    .map(({ place, day }, before) => ({ day, length: place - (events[before]?.place ?? 0) - 1 }));
  const latest = events.at(-1);
  return latest && last
    ? [...closed, { day: last, length: units - latest.place, open: true }]
    : closed;
}

function daysBetween({ last, events }: RareEvents): Span[] {
  const closed = events
    .slice(1)
    .map(({ day }, before) => ({ day, length: daysFrom(events[before]?.day ?? day, day) }));
  const latest = events.at(-1);
  return latest && last
    ? [...closed, { day: last, length: daysFrom(latest.day, last), open: true }]
    : closed;
}

function daysFrom(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000);
}
