import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import type { RateFigure } from "@/lib/audit/figure";
import type { Values } from "@/lib/records/column";
import { period } from "@/lib/records/period";
import { figures } from "@/lib/reports/figures";
import { wilson } from "@/lib/statistics/proportion-interval";
import { disconnect } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";
import { bringIn } from "../store/bring-in";

/**
 * Published counts of instrument separation, entered as records: a tooth or case is one visit, an instrument's use
 * one row. Each count is checked on its published denominator; rates and intervals in per cent, to three decimals.
 * Wilson's interval is not the one shown for separations but is published beside, so it is checked on the same counts.
 */
const published = [
  // Iqbal 2006, J Endod 32:1048: graduate programme, hand instruments, cases.
  {
    code: "IQBAL",
    kind: "hand",
    visits: 4865,
    canals: 4865,
    instruments: 0,
    events: 12,
    measure: "separation-per-visit",
    of: 4865,
    percent: 0.247,
    wilson: [0.141, 0.431],
    exact: [0.128, 0.43],
  },
  // Di Fiore 2006, Int Endod J 39:700: residents, rotary, teeth and canals.
  {
    code: "DIFIORE",
    kind: "rotary",
    visits: 1403,
    canals: 3181,
    instruments: 0,
    events: 26,
    measure: "separation-per-visit",
    of: 1403,
    percent: 1.853,
    wilson: [1.268, 2.702],
    exact: [1.214, 2.704],
  },
  {
    code: "DIFIORE",
    kind: "rotary",
    visits: 1403,
    canals: 3181,
    instruments: 0,
    events: 26,
    measure: "separation-per-canal",
    of: 3181,
    percent: 0.817,
    wilson: [0.558, 1.195],
    exact: [0.535, 1.195],
  },
  // Plotino 2015: private practices, reciprocating, instruments and canals.
  {
    code: "PLOTINO",
    kind: "reciprocating",
    visits: 1890,
    canals: 3780,
    instruments: 1696,
    events: 8,
    measure: "separation-per-instrument",
    of: 1696,
    percent: 0.472,
    wilson: [0.239, 0.928],
    exact: [0.204, 0.927],
  },
  {
    code: "PLOTINO",
    kind: "reciprocating",
    visits: 1890,
    canals: 3780,
    instruments: 1696,
    events: 8,
    measure: "separation-per-canal",
    of: 3780,
    percent: 0.212,
    wilson: [0.107, 0.417],
    exact: [0.091, 0.417],
  },
  // Restor Dent Endod 2023;48:e38: faculty, hand and rotary, teeth.
  {
    code: "FACULTY",
    kind: "rotary",
    visits: 2168,
    canals: 2168,
    instruments: 0,
    events: 79,
    measure: "separation-per-visit",
    of: 2168,
    percent: 3.644,
    wilson: [2.934, 4.518],
    exact: [2.895, 4.521],
  },
  // Computed from the counts: the exact upper limit of no event in 60.
  {
    code: "NONE",
    kind: "rotary",
    visits: 60,
    canals: 60,
    instruments: 0,
    events: 0,
    measure: "separation-per-visit",
    of: 60,
    percent: 0,
    wilson: [0, 6.017],
    exact: [0, 5.963],
  },
] as const;

let database: ScratchDatabase;
let found: RateFigure[];

beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  const settings = new Map(published.map((setting) => [setting.code, setting]));
  const rows = [...settings.values()].map(recordsOf);
  await bringIn({
    sessions: rows.flatMap((some) => some.sessions),
    canals: rows.flatMap((some) => some.canals),
    instruments: rows.flatMap((some) => some.instruments),
  });
  const year = period("2025");
  if (!year) throw new Error("2025 is a period");
  const measures = [...new Set(published.map((setting) => setting.measure))];
  found = (await figures(holderReach().figures, {
    measures,
    periods: [year],
    by: ["practice"],
  })) as RateFigure[];
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

describe("published counts of instrument separation", () => {
  test.each(published)("$code: $events of $of, $measure", (setting) => {
    const figure = found.find(
      (one) =>
        one.measure === setting.measure &&
        one.about.kind === "practice" &&
        one.about.code === setting.code,
    );
    expect(figure).toMatchObject({
      numerator: setting.events,
      denominator: setting.of,
      notRecorded: 0,
    });
    expect(inPercent(figure?.estimate)).toBe(setting.percent);
    expect([inPercent(figure?.interval?.lower), inPercent(figure?.interval?.upper)]).toEqual(
      setting.exact,
    );
    const score = wilson(figure?.numerator ?? -1, figure?.denominator ?? 0, 0.95);
    expect([inPercent(score?.lower), inPercent(score?.upper)]).toEqual(setting.wilson);
  });
});

function inPercent(share: number | null | undefined): number {
  return Math.round((share ?? Number.NaN) * 1e5) / 1e3;
}

/** Canals are dealt to the visits in turn, and instruments to the canals; an instrument separates in its last use. */
function recordsOf(setting: (typeof published)[number]) {
  const sessions: Values[] = [];
  const canals: Values[] = [];
  const instruments: Values[] = [];
  for (let visit = 0; visit < setting.visits; visit += 1) {
    sessions.push({
      session_id: `V${visit}`,
      practice: setting.code,
      chair: "1",
      clinician: "C1",
      patient: `p${visit}`,
      tooth: "16",
      tooth_notation: "fdi",
      started_at: new Date(Date.UTC(2025, 0, 10) + visit * 3_600_000).toISOString(),
      treatment: "primary",
      outcome: "completed",
    });
  }
  // The last canals are the last uses, each of another visit and another instrument.
  const firstParted = setting.canals - setting.events;
  for (let canal = 0; canal < setting.canals; canal += 1) {
    const place = {
      session_id: `V${canal % setting.visits}`,
      practice: setting.code,
      canal: `unknown-${Math.floor(canal / setting.visits) + 1}`,
    };
    canals.push({ ...place, preparation: setting.kind });
    instruments.push({
      ...place,
      seq: 1,
      kind: setting.kind,
      separated: canal >= firstParted ? 1 : 0,
      ...(setting.instruments > 0 ? { instrument_id: `i${canal % setting.instruments}` } : {}),
    });
  }
  return { sessions, canals, instruments };
}
