import { afterEach, beforeEach, expect, test } from "vitest";
import { holderReach, recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { filesOfImport } from "@/lib/store/import/imports";
import { letGo, takeBackLetGo } from "@/lib/store/import/let-go";
import type { HeldAsRead } from "@/lib/store/import/staging";
import { benchRows } from "@/lib/store/mend/bench-rows";
import { freshDatabase } from "../../fresh-database";
import { bringIn, canal, delivery, snapshot, visit } from "../bring-in";

// Expected values follow from the rules of the record format; worked by hand.
let database: ScratchDatabase;
const reach = holderReach().records;

beforeEach(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
});
afterEach(async () => {
  await disconnect();
  await database.drop();
});

const wrong: HeldAsRead = {
  line: 3,
  key: "V-1 MB1 2",
  practice: "OAK",
  session_id: "V-1",
  canal: "MB1",
  raw: { volume_ml: "lots" },
  reasons: [{ column: "volume_ml", found: "lots", remedy: "write a number", sentence: "x" }],
};
const withHeld = { sessions: [visit], canals: [canal], irrigation: [delivery, wrong] };

async function heldIds(state: "held" | "let-go" = "held") {
  return (await benchRows(reach, { state, limit: 100, offset: 0 })).rows.map((row) => row.id);
}

async function volume() {
  const { rows } = await pool().query("select volume_ml from canal_facts");
  return rows.map((row) => row.volume_ml);
}

test("a held delivery keeps its canal from being recorded until it is let go, and again once it is taken back", async () => {
  await bringIn(withHeld);
  expect(await volume()).toEqual([null]);
  const before = await snapshot();

  expect(await letGo(reach, await heldIds(), "typing mistake, entered again")).toBe(1);
  expect(await volume()).toEqual([4.5]);
  const [row] = (await benchRows(reach, { state: "let-go", limit: 9, offset: 0 })).rows;
  expect(row).toMatchObject({
    settledBy: "command line",
    settledReason: "typing mistake, entered again",
  });

  expect(await takeBackLetGo(reach, await heldIds("let-go"))).toBe(1);
  expect(await snapshot()).toEqual(before);
});

test("the counts of every file that bears the row follow, and add up to the rows read", async () => {
  const first = await bringIn(withHeld);
  const second = await bringIn({ irrigation: [delivery, wrong] });
  await letGo(reach, await heldIds(), "known and settled");
  for (const { importId } of [first, second]) {
    const irrigation = (await filesOfImport(reach, importId)).find(
      (file) => file.table === "irrigation",
    );
    expect(irrigation).toMatchObject({ read: 2, held: 0, letGo: 1 });
    expect((irrigation?.accepted ?? 0) + (irrigation?.repeated ?? 0)).toBe(1);
  }
  await takeBackLetGo(reach, await heldIds("let-go"));
  const [again] = await filesOfImport(reach, second.importId);
  expect(again).toMatchObject({ read: 2, held: 1, letGo: 0 });
});

test("a row that waits and was let go joins when it is taken back after its visit has come", async () => {
  await bringIn({ canals: [canal] });
  await letGo(reach, await heldIds(), "no such visit here");
  await bringIn({ sessions: [visit] });
  expect((await snapshot()).canal_facts).toEqual([]);
  expect(await takeBackLetGo(reach, await heldIds("let-go"))).toBe(1);
  expect(await heldIds()).toEqual([]);
  expect((await snapshot()).canal_facts).toMatchObject([{ canal: "MB1" }]);
});

test("a keeper of another practice lets nothing go", async () => {
  await bringIn(withHeld);
  const elm: Viewer = {
    userId: "u",
    name: "Elm keeper",
    email: "e@elm.example",
    grants: [{ role: "record-keeper", practice: "ELM", clinicianKey: null }],
  };
  expect(await letGo(recordsReach(elm), await heldIds(), "not mine")).toBe(0);
  expect(await heldIds()).toHaveLength(1);
});
