import type { MadeHome } from "./made-home";
import type { Measured } from "./scale";

/** One number beside what is promised of it. */
export type Line = {
  readonly what: string;
  readonly promised: string;
  readonly measured: string;
  readonly holds: boolean;
};

/** Each number beside what is promised. Ratios are of one run. */
export function lines(found: Measured): Line[] {
  const { small, large, copies, workbook, quarter, users, firstLoads, scrolled } = found;
  const { large: one, longer } = quarter;
  const all = users.find(({ page }) => page === "all pages");
  const heaviest = [...firstLoads].sort((a, b) => b.before - a.before)[0];
  const heaviestWith = [...firstLoads].sort(
    (a, b) => b.before + b.charts - (a.before + a.charts),
  )[0];
  return [
    ...imported(`${small.canals} canals`, small, copies.small),
    ...imported(`${large.canals} canals`, large, copies.large),
    atMost(`peak memory, a workbook of ${workbook.rows} rows`, workbook.peakMb, 400, "MB"),
    atMost(`quarter of ${one.canals} canals, intervals and flags, afresh`, one.afresh, 300, "ms"),
    atMost("the same with every leave-one-out comparison", one.withOthers, 600, "ms"),
    atMost("the same the second time", one.again, 20, "ms"),
    atMost("history four times longer, over as it is", longer.afresh / one.afresh, 1.2, "×", 2),
    atMost("afresh, over DuckDB", one.afresh / (one.duck ?? Number.NaN), 5, "×", 2),
    atMost("the second time, over DuckDB", one.again / (one.duck ?? Number.NaN), 1, "×", 3),
    atMost("twenty quarters' trend of one measure", one.trend, 300, "ms"),
    atMost("intervals, flags and standardisation alone", one.statistics, 50, "ms"),
    atMost(`pages, p95, ${all?.answers ?? 0} answers to 20 people`, all?.p95, 150, "ms"),
    {
      what: "the longest first look at one of them, not among those answers",
      promised: "nothing",
      measured: `${all?.first ?? "?"} ms`,
      holds: true,
    },
    atMost(`JavaScript before charts, most (${heaviest?.page})`, heaviest?.before, 160, "kB"),
    atMost(
      `JavaScript with charts, most (${heaviestWith?.page})`,
      heaviestWith && heaviestWith.before + heaviestWith.charts,
      280,
      "kB",
    ),
    atMost(
      `longest frame, ${scrolled.page} scrolled (${scrolled.rows} rows)`,
      scrolled.longest,
      100,
      "ms",
    ),
  ];
}

function imported(what: string, { imported }: MadeHome, copySeconds: number): Line[] {
  const { rows, seconds, keepSeconds, peakMb } = imported;
  const alone = copySeconds / seconds;
  const whole = copySeconds / (seconds + keepSeconds);
  return [
    {
      what: `import, ${what} (${rows} rows in ${seconds.toFixed(0)} s, COPY ${copySeconds.toFixed(0)} s)`,
      promised: "≥ 0.20 of COPY, aim 0.40",
      measured: alone.toFixed(2),
      holds: alone >= 0.2,
    },
    {
      what: `the same with all quarters counted (${keepSeconds.toFixed(0)} s more)`,
      promised: "≥ 0.20 of COPY, aim 0.40",
      measured: whole.toFixed(2),
      holds: whole >= 0.2,
    },
    atMost(`peak memory, ${what}`, peakMb, 400, "MB"),
  ];
}

function atMost(
  what: string,
  found: number | undefined,
  most: number,
  unit: string,
  digits = 0,
): Line {
  const measured = found === undefined || Number.isNaN(found) ? "not measured" : found;
  return {
    what,
    promised: `≤ ${most} ${unit}`,
    measured: typeof measured === "string" ? measured : `${measured.toFixed(digits)} ${unit}`,
    holds: typeof measured === "number" && measured <= most,
  };
}
