import * as fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { periodsAround } from "@/lib/audit/disclosure/calendar";
import { quarter } from "@/lib/records/period";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import * as behind from "@/lib/store/quality/people-behind";
import * as counts from "@/lib/store/quality/people-counts";
import { canonicalJson } from "@/lib/views/canonical-json";
import { freshDatabase } from "../../fresh-database";
import { arbitraryRecords } from "../../plain/arbitrary";
import { bringIn } from "../bring-in";
import { emptyFor, rowsOf } from "../records-rows";

// Expected values are those of the same database recomputed from its records by other code: PostgreSQL's own counting.

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

test("people behind visits are as many by what is kept of months as by the records", async () => {
  const { figures } = holderReach();
  const periods = periodsAround(quarter(2024, 2));
  let compared = 0;
  await fc.assert(
    fc.asyncProperty(arbitraryRecords, async (records) => {
      await emptyFor(records);
      await bringIn(rowsOf(records));
      // A pseudonym is over practice and reference: no two practices have one in common.
      for (const table of ["sessions", "visit_facts", "canal_facts"])
        await pool().query(`update ${table} set patient = practice || ' ' || patient`);
      const kept = await behind.peopleBehind(figures, periods);
      const fresh = await behind.recomputed(figures, periods);
      expect(named(kept.patients)).toEqual(named(fresh.patients));
      expect(named(kept.clinicians)).toEqual(named(fresh.clinicians));
      for (const period of periods) {
        const people = await counts.peopleCounts(figures, period);
        expect(people).toEqual(await counts.recomputed(figures, period));
        compared += people.length;
      }
    }),
    {
      numRuns: Number(process.env.CANAL_AUDIT_CASES ?? 10),
      interruptAfterTimeLimit: 45_000,
      markInterruptAsFailure: false,
      endOnFailure: true,
    },
  );
  expect(compared).toBeGreaterThan(30);
}, 200_000);

function named(all: readonly object[]): string[] {
  return all.map((one) => canonicalJson(one)).sort();
}
