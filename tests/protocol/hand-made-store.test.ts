import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import type { Criterion } from "@/lib/protocol/criterion";
import { outcomeOf } from "@/lib/protocol/outcome";
import { criterionIds } from "@/lib/records/criterion-id";
import { disconnect, pool } from "@/lib/store/database";
import { fillIn } from "@/lib/store/figures/criterion/fill-in";
import { Parameters } from "@/lib/store/figures/criterion/parameters";
import { definedUnits, type Evidence } from "@/lib/store/figures/criterion/units-sql";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { freshDatabase } from "../fresh-database";
import { records } from "../plain/hand-made";
import { bringIn } from "../store/bring-in";
import { emptyFor, rowsOf } from "../store/records-rows";
import { handMadeCases } from "./hand-made/hand-made";
import { defaultsWithLimits } from "./with-limits";

// Expected values are worked by hand in the cases themselves; here the figures and the explanation are held to them.

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

describe.each(criterionIds)("%s", (id) => {
  const criterion = defaultsWithLimits.find((one) => one.id === id);
  const cases = handMadeCases.filter((one) => one.criterion === id);
  beforeEach(() => emptyFor(records({})));

  test.each(cases)("$says", async ({ records: given, outcomes, clinicians = {}, weights = {} }) => {
    if (!criterion) throw new Error(`no criterion ${id}`);
    const rows = await judged(criterion, given);
    const counted = Object.entries(outcomes).filter(([, outcome]) => outcome !== "not counted");
    const own = rows.filter(({ shared }) => !shared);
    expect(Object.fromEntries(own.map((row) => [row.id, countedAs(row)]))).toEqual(
      Object.fromEntries(counted),
    );
    for (const row of own) {
      const unit = { ...row.evidence, exclusion: row.outside, exception: row.exception };
      expect(inWords(outcomeOf(criterion, unit)), row.id).toBe(countedAs(row));
      expect(row.weight).toBe(weights[row.id] ?? 1);
      const expected = clinicians[row.id];
      const codes = rows.flatMap((one) => (one.id === row.id ? (one.clinician ?? []) : []));
      if (expected) expect([...new Set(codes)].sort()).toEqual(expected);
    }
  });
});

type Row = {
  id: string;
  shared: boolean;
  clinician: string | null;
  weight: number;
  evidence: Evidence;
  exception: string | null;
  outside: string | null;
  excluded: string | null;
  excepted: string | null;
  met: boolean;
  missing: boolean;
};

async function judged(
  criterion: Criterion,
  given: (typeof handMadeCases)[number]["records"],
): Promise<Row[]> {
  await bringIn(rowsOf(records(given)));
  const parameters = new Parameters([]);
  const judging = { protocol: await protocolWithin(holderReach().figures), parameters };
  const units = fillIn(definedUnits(criterion, judging, { evidence: true }), {
    place: "true",
    whose: "true",
  });
  const { rows } = await pool().query<Row>(
    `select u.*, case when u.visit_id is null then u.practice || '/' || u.chair || '/' || u.local_day::text
       else v.session_id || case when u.canal <> '' or u.seq is not null then '/' || u.canal else '' end
         || coalesce('/' || u.seq, '') end as id
     from (${units}) u left join sessions v on v.id = u.visit_id`,
    parameters.values,
  );
  return rows;
}

function countedAs(row: Row): string {
  if (row.excluded !== null) return `excluded: ${row.excluded}`;
  if (row.excepted !== null) return `excepted: ${row.excepted}`;
  return row.met ? "met" : row.missing ? "not recorded" : "not met";
}

function inWords(outcome: ReturnType<typeof outcomeOf>): string {
  if (!outcome) return "not counted";
  return "reason" in outcome ? `${outcome.outcome}: ${outcome.reason}` : outcome.outcome;
}
