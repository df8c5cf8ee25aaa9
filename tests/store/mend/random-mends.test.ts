import * as fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { letGo, takeBackLetGo } from "@/lib/store/import/let-go";
import { UndoRefused } from "@/lib/store/import/take-back";
import { undoImport } from "@/lib/store/import/undo-import";
import { mendRows } from "@/lib/store/mend/mend-rows";
import { undoMend } from "@/lib/store/mend/undo-mend";
import { freshDatabase } from "../../fresh-database";
import { noRecords } from "../../plain/records";
import { bringIn, snapshot } from "../bring-in";
import { countsThatDoNotAddUp, factsAnew } from "../corrections/counts-and-facts";
import { emptyFor } from "../records-rows";
import { type Messy, messyRows, rules, staged } from "./messy-rows";
import { remake } from "./remake";

// Expected values are the project's own properties: every row read is in one state, facts are those of the rows, an undo leaves
// nothing, and trying changes nothing.
const reach = holderReach().records;
let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const cases = { numRuns: Number(process.env.CANAL_AUDIT_CASES ?? 12), endOnFailure: true };
/** On a busy machine fewer cases are tried; none is left running. */
const longest = Number(process.env.CANAL_AUDIT_CASES ? 3_600_000 : 40_000);

type Step = {
  readonly kind: "read" | "mend" | "undo mend" | "let go" | "take back" | "undo import";
  readonly rows: Messy[];
  readonly pick: number;
};
const step = (kinds: Step["kind"][]): fc.Arbitrary<Step> =>
  fc.record({ kind: fc.constantFrom(...kinds), rows: messyRows, pick: fc.nat({ max: 13 }) });

async function mend(pick: number, tryOnly = false) {
  const rule = rules[pick % rules.length];
  if (!rule) throw new Error("there are rules");
  return mendRows(reach, {}, remake(rule.changes), {
    ...rule,
    zone: "Europe/London",
    examples: 3,
    tryOnly,
  });
}

async function heldIds(state: "held" | "let-go") {
  const { rows } = await pool().query<{ id: string }>(
    "select id::text from held where state = $1 order by id",
    [state],
  );
  return rows.map((row) => row.id);
}

function picked<One>(all: readonly One[], pick: number): One | undefined {
  return all[pick % Math.max(1, all.length)];
}

const timeout = longest + 60_000;

test(
  "among imports, undone ones, and rows let go, counts add up and facts are those of the rows",
  async () => {
    const end = Date.now() + longest;
    await fc.assert(
      fc.asyncProperty(
        fc.array(
          step([
            "read",
            "read",
            "mend",
            "mend",
            "mend",
            "undo mend",
            "let go",
            "take back",
            "undo import",
          ]),
          { minLength: 4, maxLength: 16 },
        ),
        async (steps) => {
          if (Date.now() > end) return;
          await emptyFor(noRecords({ OAK: "Europe/London" }));
          const imports: number[] = [];
          const mends: number[] = [];
          for (const { kind, rows, pick } of steps) {
            if (kind === "read") imports.push((await bringIn(staged(rows))).importId);
            else if (kind === "mend") {
              const before = await wholeState();
              const tried = await mend(pick, true);
              expect(await wholeState()).toEqual(before);
              const { mendId, ...done } = await mend(pick);
              expect(done).toEqual({ ...tried, mendId: undefined });
              expect(done.accepted + done.repeated + done.stillHeld).toBe(done.rows);
              if (mendId) mends.push(mendId);
            } else if (kind === "undo mend") {
              const id = picked(mends, pick);
              if (id) await undoMend(reach, id).catch(onlyRefused);
            } else if (kind === "let go") {
              const id = picked(await heldIds("held"), pick);
              if (id) expect(await letGo(reach, [id], "tried")).toBe(1);
            } else if (kind === "take back") {
              const id = picked(await heldIds("let-go"), pick);
              if (id) expect(await takeBackLetGo(reach, [id])).toBe(1);
            } else {
              const id = picked(imports, pick);
              if (id) await undoImport(reach, id).catch(onlyRefused);
            }
            expect(await countsThatDoNotAddUp()).toEqual([]);
            expect(await strayPlaces()).toEqual([]);
            expect(await snapshot()).toEqual(await factsAnew());
          }
        },
      ),
      cases,
    );
  },
  timeout,
);

test(
  "all mends taken back, latest first, leave what was before",
  async () => {
    const end = Date.now() + longest;
    await fc.assert(
      fc.asyncProperty(
        fc.array(messyRows, { minLength: 1, maxLength: 4 }),
        fc.array(fc.nat({ max: 13 }), { minLength: 1, maxLength: 5 }),
        async (reads, picks) => {
          if (Date.now() > end) return;
          await emptyFor(noRecords({ OAK: "Europe/London" }));
          for (const rows of reads) await bringIn(staged(rows));
          let apart = await heldApart();
          const before = [await wholeState(), await stateOfPlaces()].map(asJson);
          const mends: number[] = [];
          for (const pick of picks) {
            const { mendId } = await mend(pick);
            if (mendId) mends.push(mendId);
            apart &&= !(await heldAfterAll());
          }
          for (const id of mends.reverse()) await undoMend(reach, id);
          if (apart) expect(asJson(await wholeState())).toEqual(before[0]);
          expect(asJson(await stateOfPlaces())).toEqual(before[1]);
        },
      ),
      cases,
    );
  },
  timeout,
);

function onlyRefused(trouble: unknown) {
  if (!(trouble instanceof UndoRefused)) throw trouble;
}

/** Places that bear two rows, or none: every line read stands somewhere once. */
async function strayPlaces(): Promise<unknown[]> {
  const tables = ["sessions", "canals", "irrigation", "instruments", "followups"];
  const { rows } = await pool().query(`
    select f.id, f.table_name, f.read, count(p.line) as places, count(distinct p.line) as lines
    from import_files f join imports i on i.id = f.import_id left join (
      ${tables.map((table) => `select file_id, line from ${table}`).join(" union all ")}
      union all select file_id, line from witnesses
      union all select file_id, line from held where state in ('held', 'let-go')
    ) p on p.file_id = f.id
    where i.state = 'done' group by f.id having count(p.line) <> f.read or count(distinct p.line) <> f.read`);
  return rows;
}

/** No two rows held say the same row in two ways: such rows become one when they join, and stay one when it is taken back. */
async function heldApart(): Promise<boolean> {
  const { rowCount } = await pool().query(
    "select from held where kind <> 'check' group by table_name, session_id, key having count(*) > 1",
  );
  return rowCount === 0;
}

/** A row that joined is held after all, for a separation that joined too: from then on its practice is known of it. */
async function heldAfterAll(): Promise<boolean> {
  return (await pool().query("select from held where kind = 'after-separation'")).rowCount !== 0;
}

function asJson(state: unknown): unknown {
  return JSON.parse(JSON.stringify(state));
}

/** Figures, rows, counts and the places of what is held: every line is there, in however many held rows. */
async function stateOfPlaces() {
  const [{ held: _, ...decided }, ...found] = await wholeState();
  const { rows } = await pool().query(
    `select file_id, line from held where state <> 'mended'
     union all select file_id, line from witnesses where table_name = 'held' order by 1, 2`,
  );
  return [decided, ...found.slice(0, -3), rows, found.at(-2)];
}

/** Figures, rows with their places, held rows and counts; numbers apart, as a row may be held anew. */
async function wholeState(): Promise<[Record<string, unknown[]>, ...unknown[]]> {
  const found: [Record<string, unknown[]>, ...unknown[]] = [await snapshot()];
  for (const [table, key] of Object.entries({
    sessions: "session_id",
    canals: "visit_id, canal",
    irrigation: "visit_id, canal, seq",
    instruments: "visit_id, canal, seq",
    followups: "visit_id, canal, seq, day",
  })) {
    const { rows } = await pool().query(`select * from ${table} order by ${key}`);
    found.push(rows.map(({ id, visit_id, ...row }) => row));
  }
  const held = await pool().query(
    "select table_name, kind, practice, session_id, canal, key, raw, values, reasons, state, mend_id, file_id, line from held where state <> 'mended' order by file_id, line",
  );
  const counts = await pool().query(
    "select id, read, accepted, repeated, held, let_go from import_files order by id",
  );
  const witnesses = await pool().query(
    "select table_name = 'held' as held, file_id, line from witnesses order by 2, 3",
  );
  return [...found, held.rows, counts.rows, witnesses.rows];
}
