import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { period } from "@/lib/records/period";
import { composites } from "@/lib/reports/composite";
import { figures } from "@/lib/reports/figures";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { putInForce, takeOutOfForce } from "@/lib/store/protocol/change-protocol";
import { freshDatabase } from "../../fresh-database";
import { bringIn } from "../bring-in";

// Expected counts: worked by hand from the rows below.

const reach = holderReach().figures;
const by = ["group", "practice", "clinician"] as const;
const [before, after, whole] = ["2026-07-01..2026-08-14", "2026-08-15..2026-09-30", "2026-Q3"].map(
  (name) => {
    const found = period(name);
    if (!found) throw new Error(name);
    return found;
  },
);

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
beforeEach(async () => {
  await pool().query("truncate criterion_versions");
  await pool().query(
    "truncate sessions, canals, irrigation, canal_facts, visit_facts, held cascade",
  );
  const days = ["2026-07-03", "2026-08-14", "2026-08-15", "2026-09-30"];
  await bringIn({
    sessions: days.map((day, place) => ({
      session_id: `V-${place}`,
      practice: "OAK",
      chair: "OAK-1",
      clinician: "C01",
      patient: `hash-${place}`,
      started_at: `${day}T09:00:00.000Z`,
      tooth: "26",
      tooth_notation: "fdi",
      treatment: "primary",
      outcome: "completed",
    })),
    canals: days.map((_, place) => ({
      session_id: `V-${place}`,
      canal: "P",
      preparation: "rotary",
      filled: true,
    })),
    // 12 mL each: over a floor of 10, under one of 15.
    irrigation: days.map((_, place) => ({
      session_id: `V-${place}`,
      canal: "P",
      seq: 1,
      irrigant: "naocl",
      concentration_pct: 3,
      volume_ml: 12,
      delivery: "syringe",
    })),
  });
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const floor = defaults.find(({ id }) => id === "hypochlorite-floor") as Criterion;
const raised: Criterion = {
  ...floor,
  met: { ...floor.met, atLeast: 15 } as Criterion["met"],
  target: 0.9,
};
const change = {
  practices: ["OAK"],
  criterion: raised,
  from: "2026-08-15",
  today: "2026-08-15",
  reason: "the practice raised its floor",
};

async function bytes(of = before): Promise<string> {
  if (!of) throw new Error("no period");
  const asked = { periods: [of], by };
  return JSON.stringify([await figures(reach, asked), await composites(reach, asked)]);
}

async function ofFloor(of = whole) {
  if (!of) throw new Error("no period");
  const [figure] = await figures(reach, {
    measures: ["criterion/hypochlorite-floor"],
    periods: [of],
    by: ["practice"],
  });
  return figure;
}

test("a change in the middle of a quarter leaves every figure before it as it was, byte for byte", async () => {
  const then = await bytes();
  expect(await ofFloor()).toMatchObject({ numerator: 4, denominator: 4, target: 0.8 });
  expect(await putInForce(reach, change)).toEqual([]);
  expect(await bytes()).toBe(then);
  // Two visits by each version; targets that differ give no target together.
  expect(await ofFloor()).toMatchObject({
    numerator: 2,
    denominator: 4,
    changedOn: ["2026-08-15"],
  });
  expect(await ofFloor()).not.toHaveProperty("target");
  expect(await ofFloor(after)).toMatchObject({ numerator: 0, denominator: 2, target: 0.9 });
});

test("taking a criterion out of force leaves what came before it, and counts nothing after", async () => {
  const then = await bytes();
  const ended = { ...change, criterion: floor, id: floor.id };
  expect(await takeOutOfForce(reach, ended)).toEqual([]);
  expect(await bytes()).toBe(then);
  expect(await ofFloor()).toMatchObject({ numerator: 2, denominator: 2 });
  expect(await ofFloor(after)).toBeUndefined();
});

test("no change of what is in force may begin in the past, and a refused one changes nothing", async () => {
  const then = await bytes(whole);
  expect(await putInForce(reach, { ...change, from: "2026-08-14" })).toEqual(["OAK"]);
  expect(await bytes(whole)).toBe(then);
});

test("one's own criterion may begin before it was written; overall scores count it from then on", async () => {
  const [quarter] = [whole];
  if (!quarter) throw new Error("no period");
  const scores = async () => JSON.stringify(await composites(reach, { periods: [quarter], by }));
  const then = await scores();
  const own = { ...raised, id: "own-more", title: "More of it" };
  const begun = { ...change, criterion: own, from: "2026-07-01", today: "2026-10-05" };
  expect(await putInForce(reach, begun)).toEqual([]);
  const [figure] = await figures(reach, {
    measures: ["criterion/own-more"],
    periods: [quarter],
    by: ["practice"],
  });
  expect(figure).toMatchObject({ numerator: 0, denominator: 4 });
  expect(await scores()).toBe(then);
});
