import * as fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach, ownReach } from "@/lib/access/reach";
import type { OpportunityTally } from "@/lib/measures/opportunities";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { countsOverall } from "@/lib/protocol/overall";
import { type Period, period } from "@/lib/records/period";
import { tableNames } from "@/lib/records/tables";
import { disconnect } from "@/lib/store/database";
import { opportunities } from "@/lib/store/figures/opportunities";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../../fresh-database";
import { arbitraryRecords } from "../../plain/arbitrary";
import { plainOpportunities } from "../../plain/opportunities";
import { setByPractice } from "../../protocol/with-limits";
import { bringIn } from "../bring-in";
import { emptyFor, rowsOf } from "../records-rows";
import { putVersions } from "./put-in-force";

// Expected values are computed by the plain version under tests/plain.

const kinds = ["group", "practice", "clinician"] as const;
const criteria = defaults.filter(countsOverall).map(({ id }) => id);
const periods = ["2024-Q2", "2024-Q3", "2024-06", "2024-06-30..2024-07-01"].map((name): Period => {
  const found = period(name);
  if (!found) throw new Error(`no period: ${name}`);
  return found;
});

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

test("PostgreSQL and the plain computation agree in every opportunity of random records", async () => {
  const seen = { met: 0, notRecorded: 0, notMet: 0, whole: 0 };
  await fc.assert(
    fc.asyncProperty(arbitraryRecords, fc.boolean(), async (records, backwards) => {
      await emptyFor(records);
      await putVersions(Object.keys(records.zones), setByPractice);
      await bringIn(rowsOf(records), backwards ? [...tableNames].reverse() : undefined);
      const found = await opportunities(holderReach().figures, { periods, by: kinds });
      const plain = periods.flatMap((one) =>
        plainOpportunities(records, { period: one, by: kinds, criteria }),
      );
      expect(inOrder(found)).toEqual(inOrder(plain));
      for (const tally of plain.filter(({ subject }) => subject.kind === "clinician")) {
        const own = await opportunities(reachOf(tally), {
          periods: [tally.period],
          by: ["clinician"],
        });
        expect(inOrder(own)).toEqual(inOrder([tally]));
      }
      for (const { opportunities: all, visits } of plain) {
        seen.met += all.met;
        seen.notRecorded += all.notRecorded;
        seen.notMet += all.of - all.met - all.notRecorded;
        seen.whole += visits.met;
      }
    }),
    {
      // The same records each time, so that a slow machine, which draws fewer, still sees every outcome.
      seed: 7,
      numRuns: Number(process.env.CANAL_AUDIT_CASES ?? 10),
      interruptAfterTimeLimit: 90_000,
      markInterruptAsFailure: false,
    },
  );
  // Agreement says little of what was never drawn.
  for (const [what, times] of Object.entries(seen)) expect(times, what).toBeGreaterThan(0);
});

/** The clinician's own reach. */
function reachOf({ subject }: OpportunityTally) {
  const clinicianKey = "key" in subject ? subject.key : null;
  return ownReach({
    userId: "u",
    name: "Clinician",
    email: "c@group.example",
    grants: [{ role: "clinician", practice: null, clinicianKey }],
  });
}

function inOrder(some: readonly OpportunityTally[]): string[] {
  return some
    .map(({ period: { name }, ...tally }) => JSON.stringify({ name, ...tally }, sorted))
    .sort();
}

/** Objects with their keys in one order. */
function sorted(_: string, value: unknown): unknown {
  if (value === null || typeof value !== "object" || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1)));
}
