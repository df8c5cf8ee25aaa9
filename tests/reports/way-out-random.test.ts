import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import * as fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import type { Values } from "@/lib/records/column";
import { tableNames } from "@/lib/records/tables";
import { exportRecords } from "@/lib/reports/export-records";
import { importRecords } from "@/lib/reports/import-records";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import type { StagedRow } from "@/lib/store/import/staging";
import { freshDatabase } from "../fresh-database";
import { arbitraryRecords } from "../plain/arbitrary";
import { noRecords, type Records } from "../plain/records";
import { storedRecords } from "../plain/stored-records";
import { bringIn, snapshot } from "../store/bring-in";
import { emptyFor, rowsOf } from "../store/records-rows";

// What is expected is the state before the move, the project's own.

const { records: reach } = holderReach();
let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

test("random records of practices in several time zones are the same after they were moved", async () => {
  await fc.assert(
    fc.asyncProperty(arbitraryRecords.map(patientsApart), async (records) => {
      await emptyFor(records);
      await bringIn(withHeld(records));
      await bringIn(contradictions(records));
      const before = await state();
      const out = await mkdtemp(join(tmpdir(), "canal-audit-way-out-"));
      try {
        const written = await exportRecords(reach, join(out, "all"));
        expect(written.map(({ left }) => left)).toEqual(written.map(() => 0));
        await emptyFor(noRecords({}));
        for (const { folder, zone } of written) {
          const sources = tableNames.map((table) => ({
            path: join(out, "all", folder, `${table}.csv`),
            name: `${table}.csv`,
          }));
          await importRecords(reach, sources, { zone, key: Buffer.alloc(32, 9) });
        }
      } finally {
        await rm(out, { recursive: true, force: true });
      }
      expect(await state()).toEqual(before);
    }),
    {
      numRuns: Number(process.env.CANAL_AUDIT_CASES ?? 5),
      interruptAfterTimeLimit: 50_000,
      markInterruptAsFailure: false,
    },
  );
});

/** A patient's hash is over the practice too, so no two practices share one. */
function patientsApart(records: Records): Records {
  return {
    ...records,
    sessions: records.sessions.map((row) => ({
      ...row,
      patient: `${row.practice} ${row.patient}`,
    })),
  };
}

/** Held rows with what tells their visit; the rest of them is not there, which is why they are held. */
function withHeld(records: Records): Record<string, StagedRow[]> {
  const rows: Record<string, StagedRow[]> = { ...rowsOf({ ...records, held: [] }) };
  for (const [place, row] of records.held.entries()) {
    const { table, practice, session_id, canal } = row;
    const raw = {
      session_id: session_id ?? "",
      ...(practice ? { practice } : {}),
      ...(canal ? { canal } : {}),
      seq: `x${place}`,
    };
    const held = {
      ...{
        line: 10_000 + place,
        key: `held ${place}`,
        practice,
        session_id,
        canal: canal ?? "",
        raw,
      },
      reasons: [],
    };
    rows[table] = [...(rows[table] ?? []), held];
  }
  return rows;
}

/** Of every third delivery, use and visit another version, which is held. */
function contradictions({ irrigation, instruments, sessions }: Records) {
  const third = (rows: readonly Values[], change: Values) =>
    rows.filter((_, place) => place % 3 === 0).map((row) => ({ ...row, ...change }));
  return {
    sessions: third(sessions, { chair: "another" }),
    irrigation: third(irrigation, { volume_ml: 77, basis: "noted" }),
    instruments: third(instruments, { lot: "another", kind: "hand" }),
  };
}

/** Patients are hashed anew, so which rows share one is compared, and not the hash. */
async function state() {
  const facts = await snapshot();
  // A practice without a record leaves nothing to take along.
  const { held, zones, ...tables } = await storedRecords();
  const numbers = new Map<unknown, number>();
  const numbered = (row: unknown) => {
    if (typeof row !== "object" || row === null || !("patient" in row)) return row;
    if (!numbers.has(row.patient)) numbers.set(row.patient, numbers.size);
    return { ...row, patient: numbers.get(row.patient) };
  };
  const kinds = await pool().query(
    "select table_name, kind, state, session_id, nullif(practice, '') as practice, nullif(canal, '') as canal from held order by 1, 2, 3, 4, 5, 6",
  );
  return {
    facts: [facts.canal_facts, facts.visit_facts].map((rows) => rows?.map(numbered)),
    tables: Object.fromEntries(
      Object.entries(tables).map(([table, rows]) => [
        table,
        rows.map(({ patient, ...row }) => JSON.stringify(row, Object.keys(row).sort())).sort(),
      ]),
    ),
    held: kinds.rows,
    count: held.length,
  };
}
