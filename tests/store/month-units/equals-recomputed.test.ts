import * as fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach, ownReach } from "@/lib/access/reach";
import { medianEnds } from "@/lib/audit/median-ends";
import { measures } from "@/lib/measures/measures";
import { criterionMeasure } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { criteriaOf } from "@/lib/protocol/protocol";
import type { Values } from "@/lib/records/column";
import { monthsUpTo, period as periodNamed, quarter } from "@/lib/records/period";
import { type TableName, tableNames } from "@/lib/records/tables";
import { disconnect, pool } from "@/lib/store/database";
import { comparedWith } from "@/lib/store/figures/compared-with";
import * as opportunities from "@/lib/store/figures/opportunities";
import * as others from "@/lib/store/figures/others";
import * as patients from "@/lib/store/figures/patients-behind";
import * as tallies from "@/lib/store/figures/tallies";
import { carriesStratum } from "@/lib/store/figures/unit-sql";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import type { CheckedRow } from "@/lib/store/import/staging";
import { undoImport } from "@/lib/store/import/undo-import";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { deleteOldRecords } from "@/lib/store/retention/old-records";
import { canonicalJson } from "@/lib/views/canonical-json";
import { freshDatabase } from "../../fresh-database";
import { arbitraryRecords } from "../../plain/arbitrary";
import { setByPractice } from "../../protocol/with-limits";
import { bringIn, type Rows } from "../bring-in";
import { putVersions } from "../figures/put-in-force";
import { emptyFor, rowsOf } from "../records-rows";

// Expected values are those of the same database recomputed from its records by other code: PostgreSQL's own counting.

const { figures, records: holder, people } = holderReach();
const ends = medianEnds(0.5);
const by = ["group", "practice", "clinician"] as const;
const asked = {
  measures: [...measures.map(({ id }) => id), ...defaults.map(criterionMeasure)],
  periods: [quarter(2024, 2), quarter(2024, 3), ...monthsUpTo("2024-11-01", 6)],
  ends,
};

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

test("units kept of months give what the records give, after every change of records and protocol", async () => {
  const done = new Map<string, number>();
  let compared = 0;
  await fc.assert(
    fc.asyncProperty(
      arbitraryRecords,
      fc.array(fc.constantFrom(...acts), { minLength: 3, maxLength: 6 }),
      fc.infiniteStream(fc.nat(1000)),
      async (records, some, draws) => {
        const draw = (below: number) => draws.next().value % below;
        await emptyFor(records);
        const state: State = { parts: partsOf(rowsOf(records), draw), brought: [] };
        const practices = Object.keys(records.zones);
        await bringNext(state, practices, draw);
        compared += await expectEqual();
        for (const act of some) {
          if (await act(state, practices, draw)) done.set(act.name, (done.get(act.name) ?? 0) + 1);
          await raiseRevision();
          compared += await expectEqual();
        }
      },
    ),
    {
      numRuns: Number(process.env.CANAL_AUDIT_CASES ?? 8),
      interruptAfterTimeLimit: 60_000,
      markInterruptAsFailure: false,
      endOnFailure: true,
    },
  );
  expect(compared).toBeGreaterThan(100);
  expect([...done.keys()].length).toBeGreaterThan(2);
}, 240_000);

/** As whoever writes by the application does: what a process remembers is of one revision. */
async function raiseRevision(): Promise<void> {
  await pool().query(
    "update settings set value = (value::bigint + 1)::text where key = 'revision of the records'",
  );
}

type State = { parts: Rows[]; brought: number[] };
type Draw = (below: number) => number;
type Act = (state: State, practices: readonly string[], draw: Draw) => Promise<boolean>;

const bringNext: Act = async (state) => {
  const part = state.parts.shift();
  if (!part) return false;
  state.brought.push((await bringIn(part)).importId);
  return true;
};

const undoLast: Act = async (state) => {
  const last = state.brought.pop();
  if (last === undefined) return false;
  // An import that others hang on stays, as undoing it is refused.
  return undoImport(holder, last).then(
    () => true,
    () => false,
  );
};

const putInForce: Act = async (_state, _practices, draw) => {
  // Undoing an import takes practices that nothing names any more with it.
  const { rows } = await pool().query("select code from practices order by 1");
  const practice = rows[draw(Math.max(1, rows.length))]?.code;
  if (!practice) return false;
  const from = ["2000-01-01", "2024-05-10", "2024-08-20"][draw(3)] ?? "";
  await putVersions([practice], setByPractice, from);
  return true;
};

const exceptVisit: Act = async (_state, _practices, draw) => {
  const { rows } = await pool().query("select practice, session_id from sessions order by 1, 2");
  const visit = rows[draw(Math.max(1, rows.length))];
  if (!visit) return false;
  await pool().query(
    `insert into entered_exceptions (practice, session_id, canal, criterion, reason, user_id, by)
     values ($1, $2, '', $3, 'other', 'u', 'test')`,
    [visit.practice, visit.session_id, defaults[draw(defaults.length)]?.id],
  );
  return true;
};

const withdrawExceptions: Act = async () =>
  ((
    await pool().query(
      "update entered_exceptions set withdrawn_at = now(), withdrawn_by = 't' where withdrawn_at is null",
    )
  ).rowCount ?? 0) > 0;

const forgetOld: Act = async (state) => {
  state.brought = [];
  return (await deleteOldRecords(people, "2024-06-15")) > 0;
};

const acts = [
  bringNext,
  bringNext,
  undoLast,
  putInForce,
  exceptVisit,
  withdrawExceptions,
  forgetOld,
];

/** The rows of the tables over up to three files a table, some of which come with a later import. */
function partsOf(rows: Rows, draw: Draw): Rows[] {
  const parts: Partial<Record<TableName, NonNullable<Rows[TableName]>[number][]>>[] = [{}, {}, {}];
  for (const table of tableNames)
    for (const row of rows[table] ?? []) {
      const part = parts[table === "sessions" ? draw(2) : draw(3)] ?? {};
      part[table] = [...(part[table] ?? []), table === "sessions" ? ofItsPractice(row) : row];
    }
  return parts;
}

/** A pseudonym is over practice and reference: no two practices have one in common. */
function ofItsPractice(row: NonNullable<Rows[TableName]>[number]) {
  if (!("values" in row)) return row;
  const values = row.values as Values;
  const patient = `${values.practice} ${values.patient}`;
  return { ...(row as CheckedRow), values: { ...values, patient } };
}

/** Strata, patients and clinicians are compared by turns. */
let turn = 0;
/** How many tallies were compared. */
async function expectEqual(): Promise<number> {
  const kept = await tallies.tallies(figures, { ...asked, by: [...by, "chair"] });
  const fresh = await tallies.recomputed(figures, { ...asked, by: [...by, "chair"] });
  expect(named(kept)).toEqual(named(fresh));
  turn += 1;
  await expectOwnEqual();
  const strata = turn % 2 === 0 ? "technique" : "case";
  const apart = { ...asked, by: [...by, "chair"], strata } as const;
  const told = await tallies.tallies(figures, apart);
  const canals = fresh.some(({ measure }) => carriesStratum(measure));
  expect(told.some(({ stratum }) => stratum?.by === strata)).toBe(canals);
  expect(named(told)).toEqual(named(await tallies.recomputed(figures, apart)));
  const overall = await opportunities.opportunities(figures, { periods: asked.periods, by });
  const protocol = await protocolWithin(figures);
  const again = await opportunities.recomputed(figures, { periods: asked.periods, by }, protocol);
  expect(named(overall)).toEqual(named(again));
  // The units of a chair-day sit in no patient.
  const inForce = criteriaOf(protocol).filter(({ unit }) => unit !== "chair-day");
  for (const criterion of [0, 1].flatMap(
    (next) => inForce[(2 * turn + next) % inForce.length] ?? [],
  )) {
    const behind = await patients.patientsBehind(figures, criterion, asked.periods);
    const counted = await patients.recomputed(figures, criterion, asked.periods);
    expect(named(behind)).toEqual(named(counted));
  }
  await expectOthersEqual();
  return kept.length + overall.length;
}

/** One clinician's own, each in their turn. */
async function expectOwnEqual() {
  const { rows } = await pool().query<{ worker: string }>(
    "select distinct worker from canal_facts order by worker",
  );
  if (rows.length === 0) return;
  const worker = rows[turn % rows.length]?.worker ?? "";
  const grants = [{ role: "clinician" as const, practice: null, clinicianKey: worker }];
  const own = ownReach({ userId: "u", name: "n", email: "e@own.example", grants });
  const span = { ...asked, by: ["clinician"] as const };
  expect(named(await tallies.tallies(own, span))).toEqual(
    named(await tallies.recomputed(own, span)),
  );
  const again = await opportunities.recomputed(own, span, await protocolWithin(own));
  expect(named(await opportunities.opportunities(own, span))).toEqual(named(again));
}

async function expectOthersEqual() {
  const periods = [periodNamed("2024") ?? quarter(2024, 1)];
  const { rows } = await pool().query<{ worker: string }>(
    "select distinct worker from canal_facts",
  );
  const targets = rows.map(({ worker }) => ({ worker, period: 0 }));
  const measures = asked.measures.filter((id) => id !== "separation-per-instrument");
  const comparison = { ...asked, measures, periods, targets, comparison: "peers" } as const;
  const pairs = await comparedWith(figures, periods, targets, "peers");
  if (pairs.length === 0) return;
  const kept = await others.others(figures, comparison);
  expect(named(kept)).toEqual(named(await others.recomputed(figures, comparison, pairs)));
}

/** Each in canonical JSON, in order. Sums over patients are added in another order: equal to twelve digits. */
function named(all: readonly object[]): string[] {
  return all.map((one) => canonicalJson(JSON.parse(JSON.stringify(one, rounded)))).sort();
}

function rounded(_key: string, value: unknown): unknown {
  return typeof value === "number" && !Number.isInteger(value)
    ? Number(value.toPrecision(12))
    : value;
}
