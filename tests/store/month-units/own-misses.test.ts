import * as fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach, ownReach } from "@/lib/access/reach";
import { criteriaOf } from "@/lib/protocol/protocol";
import { period as periodNamed, quarter } from "@/lib/records/period";
import { disconnect, pool } from "@/lib/store/database";
import { type Miss, ownMisses, recomputed } from "@/lib/store/figures/own-misses";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { freshDatabase } from "../../fresh-database";
import { arbitraryRecords } from "../../plain/arbitrary";
import { bringIn } from "../bring-in";
import { emptyFor, rowsOf } from "../records-rows";

// Expected values are those of the same database with every unit of the period judged anew.

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

test("the pages of one's own misses follow each other as the whole list does", async () => {
  let compared = 0;
  await fc.assert(
    fc.asyncProperty(arbitraryRecords, fc.integer({ min: 1, max: 4 }), async (records, limit) => {
      await emptyFor(records);
      await bringIn(rowsOf(records));
      const protocol = await protocolWithin(holderReach().figures);
      const { rows } = await pool().query<{ worker: string }>(
        "select distinct worker from visit_facts order by worker limit 3",
      );
      for (const { worker } of rows) {
        const grants = [{ role: "clinician" as const, practice: null, clinicianKey: worker }];
        const reach = ownReach({ userId: "u", name: "n", email: "e@own.example", grants });
        for (const period of [quarter(2024, 2), periodNamed("2024") ?? quarter(2024, 1)]) {
          const pages = criteriaOf(protocol).map((criterion) => ({ criterion, period }));
          const at = (offset: number) => pages.map((page) => ({ ...page, limit, offset }));
          const [first, second] = [
            await ownMisses(reach, at(0)),
            await ownMisses(reach, at(limit)),
          ];
          for (const [place, page] of pages.entries()) {
            const all = await recomputed(reach, { ...page, limit: 2 * limit, offset: 0 });
            const both = [...(first[place] ?? []), ...(second[place] ?? [])];
            expect(both.map(inOrder)).toEqual(all.map(inOrder));
            compared += all.length;
          }
        }
      }
    }),
    {
      numRuns: Number(process.env.CANAL_AUDIT_CASES ?? 8),
      interruptAfterTimeLimit: 45_000,
      markInterruptAsFailure: false,
      endOnFailure: true,
    },
  );
  expect(compared).toBeGreaterThan(50);
}, 200_000);

/** With the items of its lists in order: what stands nowhere in a canal has none. */
function inOrder(miss: Miss): Miss {
  const lists = Object.entries(miss.evidence.lists).map(([name, items]) => {
    const keyed = items.map((item) => [JSON.stringify(item), item] as const);
    return [name, keyed.sort(([one], [other]) => (one < other ? -1 : 1)).map(([, item]) => item)];
  });
  return { ...miss, evidence: { ...miss.evidence, lists: Object.fromEntries(lists) } };
}
