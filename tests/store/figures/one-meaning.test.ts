import * as fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { outcomeOf } from "@/lib/protocol/outcome";
import { defaultProtocol } from "@/lib/protocol/protocol";
import { disconnect, pool } from "@/lib/store/database";
import { fillIn } from "@/lib/store/figures/criterion/fill-in";
import { Parameters } from "@/lib/store/figures/criterion/parameters";
import { definedUnits, type Evidence } from "@/lib/store/figures/criterion/units-sql";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../../fresh-database";
import { arbitraryRecords } from "../../plain/arbitrary";
import { arbitraryCriterion } from "../../protocol/arbitrary-criterion";
import { defaultsWithLimits } from "../../protocol/with-limits";
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

type Row = {
  canal: string;
  weight: number;
  evidence: Evidence;
  exception: string | null;
  outside: string | null;
  excluded: string | null;
  excepted: string | null;
  met: boolean;
  missing: boolean;
};

// A property: no expected values of its own. What one unit is said to be must be what the figures count it as.
test("criteria, the defaults and random ones, make of every unit of random records what PostgreSQL counts it as", async () => {
  const seen = new Map<string, Set<string>>();
  await fc.assert(
    fc.asyncProperty(
      arbitraryRecords,
      fc.array(arbitraryCriterion, { minLength: 40, maxLength: 40 }),
      async ({ held: _, zones: __, ...tables }, criteria) => {
        await pool().query(
          "truncate sessions, canals, irrigation, instruments, followups, steps, exceptions, incidents, upkeep, people, canal_facts, visit_facts, held, witnesses cascade",
        );
        await bringIn(tables);
        for (const criterion of [...defaultsWithLimits, ...criteria]) {
          const inside = await judged(criterion);
          const outside = await judged({ ...criterion, population: { not: criterion.population } });
          for (const { row, of } of [...inside, ...outside]) {
            const unit = { ...row.evidence, exclusion: row.outside, exception: row.exception };
            const counted = countedAs(row);
            const said = outcomeOf(of, unit);
            if (JSON.stringify(said) !== JSON.stringify(counted))
              expect(said, JSON.stringify({ criterion: of, unit })).toEqual(counted);
            const states = seen.get(criterion.id) ?? new Set();
            seen.set(criterion.id, states.add(counted.outcome));
          }
          const all = await judged({ ...criterion, population: { all: [] } });
          expect(inside.length + outside.length).toBeGreaterThanOrEqual(all.length);
        }
      },
    ),
    {
      numRuns: Number(process.env.CANAL_AUDIT_CASES ?? 12),
      interruptAfterTimeLimit: 25_000,
      markInterruptAsFailure: false,
      endOnFailure: true,
    },
  );
  // The units drawn must reach the outcomes that matter, or agreement says little.
  const reached = [...seen].flatMap(([id, states]) => [...states].map((state) => `${id} ${state}`));
  for (const { id } of defaults) expect([...(seen.get(id) ?? [])].length, id).toBeGreaterThan(1);
  for (const state of ["excluded", "excepted", "met", "not met", "not recorded"])
    expect(reached).toContain(`own-random ${state}`);
});

async function judged(criterion: Criterion): Promise<{ row: Row; of: Criterion }[]> {
  const parameters = new Parameters([]);
  const judging = { protocol: defaultProtocol, parameters };
  const units = fillIn(definedUnits(criterion, judging, { evidence: true }), {
    place: "true",
    whose: "true",
  });
  const { rows } = await pool().query<Row>(
    `select * from (${units}) u where not shared`,
    parameters.values,
  );
  return rows.map((row) => ({ row, of: criterion }));
}

function countedAs(row: Row) {
  if (row.excluded !== null) return { outcome: "excluded", reason: row.excluded };
  if (row.excepted !== null) return { outcome: "excepted", reason: row.excepted };
  return { outcome: row.met ? "met" : row.missing ? "not recorded" : "not met" };
}
