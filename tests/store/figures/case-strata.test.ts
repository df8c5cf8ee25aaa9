import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import type { Figure } from "@/lib/audit/figure";
import { period } from "@/lib/records/period";
import { figures } from "@/lib/reports/figures";
import { disconnect, pool } from "@/lib/store/database";
import { stratumOf } from "@/lib/store/figures/stratum-sql";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../../fresh-database";
import { type FactRow, insertFacts } from "../../reports/fact-rows";

// Expected values: tooth numbers by ISO 3950; classes of curvature after Schneider 1971 (from memory) as the project cuts
// them, under 10, 10 to under 25, 25 and over; counts worked by hand.

const quarter = period("2026-Q3");
if (!quarter) throw new Error("no quarter");
const reach = holderReach().figures;
const teeth: readonly [string, string][] = [
  ["11", "front"],
  ["13", "front"],
  ["14", "premolar"],
  ["45", "premolar"],
  ["16", "molar"],
  ["38", "molar"],
  ["53", "front"],
  ["83", "front"],
  ["54", "molar"],
  ["75", "molar"],
];
const curvatures: readonly [number | null, string | null][] = [
  [0, "slight"],
  [9.9, "slight"],
  [10, "moderate"],
  [24.9, "moderate"],
  [25, "severe"],
  [60, "severe"],
  [null, null],
];
const treatments: readonly [string, string][] = [
  ["primary", "primary"],
  ["retreatment", "retreatment"],
  ["emergency", "other"],
];

/** Every tooth with every curvature and treatment once, in turn by two clinicians; the place counts the uses. */
const rows = teeth
  .flatMap(([tooth]) =>
    curvatures.flatMap(([curvature]) =>
      treatments.map(([treatment]) => ({ tooth, curvature, treatment })),
    ),
  )
  .map(
    (one, place): FactRow => ({
      ...one,
      practice: "NORTH",
      code: place % 2 === 0 ? "A1" : "B2",
      day: "2026-08-03",
      patient: `p${place}`,
      uses: 1 + (place % 3),
      separations: place % 7 === 0 ? 1 : 0,
      volume: place,
    }),
  );

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await insertFacts(pool(), rows);
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const asked = (measure: string, strata?: "case") =>
  figures(reach, {
    measures: [measure],
    periods: [quarter as NonNullable<typeof quarter>],
    by: ["group", "clinician"],
    ...(strata ? { strata } : {}),
  });
const unitsOf = (figure: Figure) => (figure.kind === "rate" ? figure.denominator : figure.n);

test("each canal is in the cell of its tooth, curvature and treatment", async () => {
  const found = (await asked("separation-per-canal", "case")).filter(
    ({ about }) => about.kind === "group",
  );
  const expected = new Map<string, number>();
  for (const [, tooth] of teeth)
    for (const [, curvature] of curvatures)
      for (const [, treatment] of treatments) {
        const name = JSON.stringify({ by: "case", tooth, curvature, treatment });
        expected.set(name, (expected.get(name) ?? 0) + 1);
      }
  expect(expected.size).toBe(3 * 4 * 3);
  expect(
    Object.fromEntries(found.map((one) => [JSON.stringify(one.stratum), unitsOf(one)])),
  ).toEqual(Object.fromEntries(expected));
});

test.each(["separation-per-canal", "separation-per-use", "volume"])(
  "cells lose no unit and no event of %s",
  async (measure) => {
    const [whole, cells] = await Promise.all([asked(measure), asked(measure, "case")]);
    expect(whole).toHaveLength(3);
    for (const one of whole) {
      const own = cells.filter(
        ({ about }) =>
          about.kind === one.about.kind &&
          (about.kind !== "clinician" ||
            one.about.kind !== "clinician" ||
            about.key === one.about.key),
      );
      const sum = (of: (figure: Figure) => number) => own.reduce((all, cell) => all + of(cell), 0);
      expect(sum(unitsOf)).toBe(unitsOf(one));
      expect(sum(({ population }) => population)).toBe(one.population);
      if (one.kind !== "rate") continue;
      expect(sum((cell) => (cell.kind === "rate" ? cell.numerator : Number.NaN))).toBe(
        one.numerator,
      );
    }
  },
);

test("a stratum is read back from its mark, an empty part as not known", () => {
  expect(stratumOf("volume")).toEqual({ measure: "volume" });
  expect(stratumOf("criterion/length-recorded")).toEqual({ measure: "criterion/length-recorded" });
  expect(stratumOf("volume@technique/rotary/")).toEqual({
    measure: "volume",
    stratum: { by: "technique", preparation: "rotary", delivery: null },
  });
  expect(stratumOf("separation-per-use@case/molar//other")).toEqual({
    measure: "separation-per-use",
    stratum: { by: "case", tooth: "molar", curvature: null, treatment: "other" },
  });
});
