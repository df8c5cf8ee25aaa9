import * as fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { criteria } from "@/lib/protocol/criteria";
import { outcomeOf } from "@/lib/protocol/outcome";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { visitHead } from "@/lib/store/visit/visit-head";
import { visitUnits } from "@/lib/store/visit/visit-units";
import { freshDatabase } from "../../fresh-database";
import { arbitraryRecords } from "../../plain/arbitrary";
import { bringIn } from "../bring-in";

// Expected values are computed by lib/protocol/outcome on the same units.

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

// A property: no expected values of its own. What one unit is said to be must be what the figures count it as.
test("a criterion makes of one unit of random records what PostgreSQL counts it as", async () => {
  const seen = new Set<string>();
  await fc.assert(
    fc.asyncProperty(arbitraryRecords, async ({ held: _, zones: __, ...tables }) => {
      await pool().query(
        "truncate sessions, canals, irrigation, instruments, followups, steps, exceptions, incidents, upkeep, people, canal_facts, visit_facts, held, witnesses cascade",
      );
      await bringIn(tables);
      const visits = await pool().query<{ practice: string; session_id: string }>(
        "select practice, session_id from sessions",
      );
      for (const { practice, session_id } of visits.rows) {
        const head = await visitHead(holderReach().figures, practice, session_id);
        if (!head) throw new Error(`${session_id} is not found`);
        for (const unit of await visitUnits(head, criteria)) {
          expect(
            outcomeOf(unit.criterion, unit.fields),
            `${unit.criterion.id} ${JSON.stringify(unit.fields)}`,
          ).toEqual(unit.counted);
          seen.add(`${unit.criterion.id} ${unit.counted.outcome}`);
        }
      }
    }),
    { seed: 20_261_125, numRuns: 16 },
  );
  // The records drawn must reach the states that matter, or agreement says little.
  for (const state of [
    "isolation met",
    "isolation not met",
    "isolation excepted",
    "isolation excluded",
    "timer-reset met",
    "timer-reset not met",
    "timer-reset not recorded",
    "length-recorded not met",
  ]) {
    expect(seen).toContain(state);
  }
});
