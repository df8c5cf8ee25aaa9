import * as fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import type { Values } from "@/lib/records/column";
import { TakeBackRefused, takeBackCorrection } from "@/lib/store/corrections/take-back";
import { takeNewer } from "@/lib/store/corrections/take-newer";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { UndoRefused } from "@/lib/store/import/take-back";
import { undoImport } from "@/lib/store/import/undo-import";
import { freshDatabase } from "../../fresh-database";
import { noRecords } from "../../plain/records";
import { bringIn, canal, snapshot, visit } from "../bring-in";
import { emptyFor } from "../records-rows";
import { countsThatDoNotAddUp, factsAnew } from "./counts-and-facts";
import { PlainVersions } from "./plain-versions";

// Expected values are computed by the plain account beside this file (plain-versions.ts).
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

const cases = { numRuns: Number(process.env.CANAL_AUDIT_CASES ?? 15), endOnFailure: true };
/** On a busy machine fewer cases are tried; none is left running. */
const longest = Number(process.env.CANAL_AUDIT_CASES ? 3_600_000 : 40_000);

/** One delivery of a canal as a source says it: few values, so that versions repeat, complete and contradict each other. */
const said: fc.Arbitrary<Values> = fc.record({
  volume_ml: fc.constantFrom(undefined, 3, 4.5),
  duration_s: fc.constantFrom(undefined, 30, 60),
  dwell_s: fc.constantFrom(undefined, 0, 20),
});
const whole = (values: Values): Values => ({
  ...{ session_id: "V-1", canal: "MB1", seq: 1, irrigant: "naocl", delivery: "syringe" },
  ...values,
});

type Step = {
  readonly kind: "read" | "take" | "take back" | "undo";
  readonly rows: Values[];
  readonly pick: number;
};
const step = (kinds: Step["kind"][]): fc.Arbitrary<Step> =>
  fc.record({
    kind: fc.constantFrom(...kinds),
    rows: fc.array(said, { minLength: 1, maxLength: 3 }),
    pick: fc.nat({ max: 5 }),
  });

async function begin() {
  await emptyFor(noRecords({ OAK: "Europe/London" }));
  await bringIn({ sessions: [visit], canals: [canal] });
}

async function heldIds() {
  const { rows } = await pool().query<{ id: string; place: string; values: Values }>(
    `select id::text, lpad(file_id::text, 6, '0') || '/' || lpad(line::text, 4, '0') as place, values from held where state = 'held' order by file_id, line`,
  );
  return rows;
}

async function accepted(): Promise<Values> {
  const { rows } = await pool().query("select volume_ml, duration_s, dwell_s from irrigation");
  return Object.fromEntries(
    Object.entries(rows[0] ?? {}).filter(([, value]) => value !== null),
  ) as Values;
}

function plainly(values: Values): Values {
  const { volume_ml, duration_s, dwell_s } = values;
  return Object.fromEntries(
    Object.entries({ volume_ml, duration_s, dwell_s }).filter(
      ([, value]) => value !== undefined && value !== null,
    ),
  ) as Values;
}

async function files(importId: number): Promise<number> {
  const { rows } = await pool().query<{ id: number }>(
    "select id from import_files where import_id = $1 and table_name = 'irrigation'",
    [importId],
  );
  return rows[0]?.id ?? 0;
}

test(
  "corrections and their taking back, among imports, leave what the plain account says",
  async () => {
    const end = Date.now() + longest;
    await fc.assert(
      fc.asyncProperty(
        fc.array(step(["read", "read", "take", "take", "take back"]), {
          minLength: 2,
          maxLength: 12,
        }),
        async (steps) => {
          if (Date.now() > end) return;
          await begin();
          const plain = new PlainVersions();
          const active: number[] = [];
          for (const one of steps) {
            const held = await heldIds();
            const chosen = held[one.pick % Math.max(1, held.length)];
            if (one.kind === "read") {
              const { importId } = await bringIn({ irrigation: one.rows.map(whole) });
              const file = await files(importId);
              one.rows.forEach((values, place) => {
                plain.read({
                  place: `${String(file).padStart(6, "0")}/${String(place + 2).padStart(4, "0")}`,
                  values,
                });
              });
            } else if (one.kind === "take" && chosen) {
              expect(await takeNewer(reach, [chosen.id])).toBe(1);
              plain.take(chosen.place, chosen.id);
              const { rows } = await pool().query<{ id: number }>(
                "select max(id) as id from corrections",
              );
              active.push(rows[0]?.id ?? 0);
            } else if (one.kind === "take back" && active.length > 0) {
              await takeBackCorrection(reach, active.pop() ?? 0);
              plain.takeBack();
            }
            expect(await accepted()).toEqual(plainly(plain.values));
            const apart = new Set(plain.held.map(({ values }) => JSON.stringify(plainly(values))));
            expect(
              new Set((await heldIds()).map(({ values }) => JSON.stringify(plainly(values)))),
            ).toEqual(apart);
            expect(await countsThatDoNotAddUp()).toEqual([]);
            expect(await snapshot()).toEqual(await factsAnew());
          }
        },
      ),
      cases,
    );
  },
  longest + 60_000,
);

test(
  "all corrections taken back in the order against that of taking give the state before, byte for byte",
  async () => {
    const end = Date.now() + longest;
    await fc.assert(
      fc.asyncProperty(
        fc.array(step(["read"]), { minLength: 2, maxLength: 4 }),
        fc.array(fc.nat({ max: 5 }), { minLength: 1, maxLength: 4 }),
        async (reads, picks) => {
          if (Date.now() > end) return;
          await begin();
          for (const { rows } of reads) await bringIn({ irrigation: rows.map(whole) });
          const before = JSON.stringify(await wholeState());
          const taken: number[] = [];
          for (const pick of picks) {
            const held = await heldIds();
            const chosen = held[pick % Math.max(1, held.length)];
            if (!chosen) continue;
            await takeNewer(reach, [chosen.id]);
            const { rows } = await pool().query<{ id: number }>(
              "select max(id) as id from corrections",
            );
            taken.push(rows[0]?.id ?? 0);
          }
          if (taken.length > 1)
            await expect(takeBackCorrection(reach, taken[0] ?? 0)).rejects.toThrow(TakeBackRefused);
          for (const id of taken.reverse()) await takeBackCorrection(reach, id);
          expect(JSON.stringify(await wholeState())).toBe(before);
        },
      ),
      cases,
    );
  },
  longest + 60_000,
);

test(
  "with undone imports and rules among them, counts add up and facts are those of the rows",
  async () => {
    const end = Date.now() + longest;
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom("ask", "newer", "first"),
        fc.array(step(["read", "read", "read", "take", "take back", "undo"]), {
          minLength: 3,
          maxLength: 12,
        }),
        async (rule, steps) => {
          if (Date.now() > end) return;
          await begin();
          await pool().query("update practices set newer_versions = $1", [rule]);
          const imports: number[] = [];
          for (const one of steps) {
            const held = await heldIds();
            const chosen = held[one.pick % Math.max(1, held.length)];
            if (one.kind === "read")
              imports.push((await bringIn({ irrigation: one.rows.map(whole) })).importId);
            else if (one.kind === "take" && chosen) await takeNewer(reach, [chosen.id]);
            else if (one.kind === "take back") {
              const { rows } = await pool().query<{ id: number }>(
                "select id from corrections where undone_at is null",
              );
              const id = rows[one.pick % Math.max(1, rows.length)]?.id;
              if (id) await takeBackCorrection(reach, id).catch(onlyRefused);
            } else if (one.kind === "undo") {
              const id = imports[one.pick % Math.max(1, imports.length)];
              if (id) await undoImport(reach, id).catch(onlyRefused);
            }
            expect(await countsThatDoNotAddUp()).toEqual([]);
            expect(await snapshot()).toEqual(await factsAnew());
          }
        },
      ),
      cases,
    );
  },
  longest + 60_000,
);

function onlyRefused(trouble: unknown) {
  if (!(trouble instanceof TakeBackRefused || trouble instanceof UndoRefused)) throw trouble;
}

/** Figures, rows with their places and counts; numbers of held rows apart, as one may be held anew. */
async function wholeState() {
  const [rows, held, counts] = await Promise.all([
    pool().query("select file_id, line, fields, volume_ml, duration_s, dwell_s from irrigation"),
    pool().query("select digest, kind, state, values from held order by digest"),
    pool().query("select id, read, accepted, repeated, held, let_go from import_files order by id"),
  ]);
  return [await snapshot(), rows.rows, held.rows, counts.rows];
}
