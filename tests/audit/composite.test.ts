import fc from "fast-check";
import { expect, test } from "vitest";
import { compositeOf } from "@/lib/audit/composite";
import type { OpportunityTally } from "@/lib/measures/opportunities";
import { quarter } from "@/lib/records/period";
import { clusterSums } from "@/lib/statistics/cluster-sums";
import { allOrNone, type CompositeUnit, opportunityScore } from "@/lib/statistics/composite";

// A property: no expected values of its own. Counts of visits must give what the visits themselves give.
const visit = fc.array(fc.boolean(), { maxLength: 5 });

test("counts of opportunities give the scores that the visits themselves give", () => {
  fc.assert(
    fc.property(fc.array(visit, { maxLength: 30 }), (visits) => {
      const units = visits.map((met) =>
        met.map((one, place): CompositeUnit => ({ criterion: String(place), met: one })),
      );
      const found = compositeOf(tallyOf(visits));
      const [score, whole] = [opportunityScore(units, 0.95), allOrNone(units, 0.95)];
      expect(found.opportunities.estimate).toBe(score?.estimate ?? null);
      expect(found.opportunities.interval).toEqual(score?.interval ?? null);
      expect(found.visits.estimate).toBe(whole?.estimate ?? null);
      expect(found.visits.interval).toEqual(whole?.interval ?? null);
    }),
  );
});

test("under ten visits nothing is read into either", () => {
  const some = (visits: number) =>
    compositeOf(tallyOf(Array.from({ length: visits }, () => [true])));
  expect([some(9).tooFew, some(10).tooFew]).toEqual([true, false]);
});

function tallyOf(visits: readonly (readonly boolean[])[]): OpportunityTally {
  const clusters = clusterSums(
    visits.map((met) => ({ events: met.filter(Boolean).length, units: met.length })),
  );
  const eligible = visits.filter((met) => met.length > 0);
  return {
    subject: { kind: "group" },
    period: quarter(2026, 3),
    opportunities: { met: clusters.events, of: clusters.units, notRecorded: 0 },
    visits: {
      met: eligible.filter((met) => met.every(Boolean)).length,
      of: eligible.length,
      notRecorded: 0,
    },
    clusters,
    byCriterion: [],
  };
}
