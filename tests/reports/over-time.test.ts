import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { holderReach, ownReach, qualityReach } from "@/lib/access/reach";
import { monthsUpTo, type Period, period, yearUntil } from "@/lib/records/period";
import { askedWhose } from "@/lib/reports/asked-whose";
import { changesOf } from "@/lib/reports/changes";
import { clinicianCusum } from "@/lib/reports/clinician-cusum";
import { figures } from "@/lib/reports/figures";
import { measureOverTime } from "@/lib/reports/measure-over-time";
import { lineOverTime } from "@/lib/reports/time-line";
import { rebase } from "@/lib/store/comparing/rebases";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";
import { type PlacedVisit, placeVisits } from "../store/comparing/placed-canals";
import { viewerAs } from "../store/comparing/viewers";
import { insertFacts } from "./fact-rows";

// Expected values: worked by hand from the visits written here, by the project's own rules of which chart fits.

const lead = holderReach().figures;
const group = { kind: "group", subject: "" } as const;
const months = monthsUpTo("2026-10-01", 24);
const quarter = period("2026-Q3") as Period;

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await pool().query("select nextval('sessions_id_seq')");
});
afterEach(async () => {
  await pool().query("truncate canal_facts, visit_facts, sessions, rebases");
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

/** So many visits of one canal each in each of the last months; the first of each month separate. */
function monthly(visits: number, separated: number, last = 4): PlacedVisit[] {
  return months.slice(-last).flatMap(({ name }) =>
    Array.from({ length: visits }, (_, place) => ({
      at: `${name}-${String(place + 1).padStart(2, "0")}T09:00Z`,
      canals: { main: { separations: place < separated ? 1 : 0 } },
    })),
  );
}

describe("the chart that fits", () => {
  const chartOf = async (measure: string, whose: Parameters<typeof lineOverTime>[2] = group) =>
    (await lineOverTime(lead, measure, whose, months))?.line.segments[0]?.chart;

  it("is what lies between separations under two a month, else the months' shares", async () => {
    await placeVisits(pool(), monthly(6, 1));
    expect(await chartOf("separation-per-canal")).toBe("g");
    expect(await chartOf("separation-per-visit")).toBe("t");
    expect(await chartOf("separation-per-use")).toBe("t");
    expect(await chartOf("criterion/length-recorded")).toBe("p");
    expect(await chartOf("volume")).toBe("xmr");
    expect(await lineOverTime(lead, "separation-per-instrument", group, months)).toBeNull();
    expect(await lineOverTime(lead, "volume", group, [])).toBeNull();
  });

  it("counts exactly two a month as frequent", async () => {
    await placeVisits(pool(), monthly(6, 2));
    expect(await chartOf("separation-per-canal")).toBe("p");
    expect(await chartOf("separation-per-use")).toBe("u");
  });

  it("has five canals between the firsts of six a month, and the last span open", async () => {
    await placeVisits(pool(), monthly(6, 1));
    const found = await lineOverTime(lead, "separation-per-canal", group, months);
    expect(found?.line.points.map(({ value, open }) => [value, open ?? false])).toEqual([
      [5, false],
      [5, false],
      [5, false],
      [5, true],
    ]);
  });

  it("is of the one asked for, and begins anew where its own line was rebased", async () => {
    const of = (code: string) => monthly(6, 1).map((visit) => ({ ...visit, code }));
    await placeVisits(pool(), [...of("A1"), ...of("B2")]);
    const whose = { kind: "clinician", subject: "NORTH/B2" } as const;
    await rebase(
      lead,
      { measure: "separation-per-canal", ...whose },
      { month: "2026-08", reason: "new files" },
    );
    const own = await lineOverTime(lead, "separation-per-canal", whose, months);
    expect(own?.line.points).toHaveLength(4);
    expect(own?.line.segments.map(({ from, to }) => [from, to])).toEqual([
      [0, 1],
      [1, 4],
    ]);
    expect(own?.rebases).toMatchObject([{ month: "2026-08", reason: "new files" }]);
    const other = { ...whose, subject: "NORTH/A1" };
    const line = await lineOverTime(lead, "separation-per-canal", other, months);
    expect(line?.line.segments).toHaveLength(1);
  });
});

describe("a measure over time", () => {
  const of = () =>
    figures(lead, {
      measures: ["separation-per-canal"],
      periods: [quarter],
      by: ["practice", "clinician"],
    });

  it("has a point a span, eight quarters at most, its rebases in words, and asks for a clinician", async () => {
    await placeVisits(pool(), monthly(6, 1, 12));
    await rebase(
      lead,
      { measure: "separation-per-canal", kind: "group", subject: "" },
      { month: "2026-05", reason: "new files" },
    );
    const view = await measureOverTime(
      lead,
      { measure: "separation-per-canal" },
      quarter,
      undefined,
      undefined,
      await of(),
    );
    expect(view.chart?.rows).toHaveLength(12);
    expect(view.chart?.rebased).toHaveLength(1);
    expect(view.rebases[0]?.words).toMatch(/^May 2026: new files \(command line, /);
    expect(view.quarters).toHaveLength(4);
    // 24 months, and the first has nothing before it.
    expect([view.months.length, view.months[0]?.value]).toEqual([23, "2024-11"]);
    expect(view.cusum).toBeNull();
    expect(view.cusumWords).toMatch(/^Choose a clinician/);
    // The quarter before is there, that of the year before is not.
    expect(view.changes).toHaveLength(1);
    expect(view.changes[0]).toMatch(/^Against April to June 2026/);
  });

  it("of a clinician's separations has the running sum of the year against the year before", async () => {
    await placeVisits(pool(), monthly(6, 1, 24));
    const view = await measureOverTime(
      lead,
      { measure: "separation-per-canal" },
      quarter,
      "clinician:NORTH/A1",
      undefined,
      await of(),
    );
    expect(view.asked.whose).toEqual({ kind: "clinician", subject: "NORTH/A1" });
    expect(view.cusum?.title).toMatch(/: 12 in 72 canals/);
    expect(view.cusum?.notes.join("\n")).toMatch(/12 separations in 72 canals, 16\.7 %/);
    expect(view.changes).toHaveLength(2);
  });
});

describe("a clinician's running sum", () => {
  it("says why there is none without a baseline", async () => {
    await placeVisits(pool(), monthly(6, 1, 4));
    const found = await clinicianCusum(lead, "NORTH/A1", "clinician A1", quarter);
    expect(found.cusum).toBeNull();
    expect(found.words).toMatch(/^No running sum/);
  });

  it("is refused to a reach that tells no clinicians apart, also when it was answered before", async () => {
    await placeVisits(pool(), monthly(6, 1, 24));
    expect((await clinicianCusum(lead, "NORTH/A1", "A1", quarter)).cusum).not.toBeNull();
    const officer = qualityReach(viewerAs("quality-officer"));
    await expect(clinicianCusum(officer, "NORTH/A1", "A1", quarter)).rejects.toThrow(RangeError);
    const own = ownReach(viewerAs("clinician", "NORTH", "NORTH/A1"));
    // Nobody else stands behind a baseline.
    expect((await clinicianCusum(own, "NORTH/A1", "A1", quarter)).cusum).toBeNull();
  });

  it("is over a calendar year that ends with the day before, whatever the leap", () => {
    expect(yearUntil("2026-10-01")).toEqual({
      name: "2025-10-01..2026-09-30",
      from: "2025-10-01",
      until: "2026-10-01",
    });
    expect(yearUntil("2028-02-29").from).toBe("2027-02-28");
  });
});

describe("changes", () => {
  it("are against the quarter before and that of the year before, where they are", async () => {
    const on = (day: string, separations: number) =>
      Array.from({ length: 9 }, (_, place) => ({
        ...{ practice: "NORTH", code: "A1", day, patient: `${day} ${place}` },
        separations: place < separations ? 1 : 0,
      }));
    await insertFacts(pool(), [
      ...on("2026-08-03", 4),
      ...on("2026-05-03", 2),
      ...on("2025-08-03", 0),
      ...on("2025-05-03", 9),
    ]);
    const periods = ["2026-Q3", "2026-Q2", "2025-Q3", "2025-Q2"].map(
      (name) => period(name) as Period,
    );
    const found = await figures(lead, {
      measures: ["separation-per-canal"],
      periods,
      by: ["group"],
    });
    const changes = changesOf(found, quarter);
    expect(changes.map(({ before }) => before.period)).toEqual(["2026-Q2", "2025-Q3"]);
    expect(changes.map(({ difference }) => difference?.estimate)).toEqual([4 / 9 - 2 / 9, 4 / 9]);
    expect(changesOf(found.slice(0, 1), quarter)).toEqual([]);
    expect(changesOf(found, period("2024-Q1") as Period)).toEqual([]);
  });
});

describe("whose line is asked for", () => {
  it("is one of the page's subjects, else the whole", async () => {
    await placeVisits(pool(), [
      ...monthly(1, 0),
      ...monthly(1, 0).map((visit) => ({ ...visit, practice: "SOUTH", code: "S1" })),
    ]);
    const some = await figures(lead, {
      measures: ["separation-per-canal"],
      periods: [quarter],
      by: ["practice", "clinician"],
    });
    const named = (asked?: string | string[], practice?: string) =>
      askedWhose(asked, practice, some);
    expect(named("practice:SOUTH").whose).toEqual({ kind: "practice", subject: "SOUTH" });
    expect(named("clinician:NORTH/A1").whose).toEqual({ kind: "clinician", subject: "NORTH/A1" });
    for (const asked of [undefined, "", "clinician:NORTH/Z9", "chair:R1", ["practice:SOUTH"]])
      expect(named(asked)).toMatchObject({ whose: group, name: "", words: "all practices" });
    expect(named("practice:SOUTH", "NORTH").whose).toEqual({ kind: "practice", subject: "NORTH" });
    expect(named().options.map(({ value }) => value)).toEqual([
      "",
      "practice:NORTH",
      "practice:SOUTH",
      "clinician:NORTH/A1",
      "clinician:SOUTH/S1",
    ]);
  });
});
