import { describe, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { period } from "@/lib/records/period";
import { tableNames } from "@/lib/records/tables";
import { figures } from "@/lib/reports/figures";
import { pool } from "@/lib/store/database";
import { markRunning } from "@/lib/store/import/broken-off";
import { recentImports } from "@/lib/store/import/imports";
import { undoImport } from "@/lib/store/import/undo-import";
import { bringIn, canal, delivery, snapshot, use, visit } from "../bring-in";
import { anotherEmptyDatabase, eachOnEmptyDatabase, heldRows } from "../empty-database";

// Expected values follow from the rules of the record format; worked by hand.

eachOnEmptyDatabase();

const whole = { sessions: [visit], canals: [canal], irrigation: [delivery], instruments: [use] };

describe("what becomes of a row", () => {
  test("new rows are accepted and the places they name are created, to be confirmed", async () => {
    const { counts } = await bringIn(whole);
    expect(counts.irrigation).toMatchObject({
      read: 1,
      accepted: 1,
      repeated: 0,
      held: 0,
      letGo: 0,
    });
    const { rows } = await pool().query("select practice, code, confirmed from chairs");
    expect(rows).toEqual([{ practice: "OAK", code: "OAK-1", confirmed: false }]);
  });

  test("the same files again are repeated and change nothing", async () => {
    await bringIn(whole);
    const before = await snapshot();
    const { counts } = await bringIn(whole);
    expect(
      Object.values(counts).map((file) => [file?.table, file?.accepted, file?.repeated]),
    ).toEqual([
      ["sessions", 0, 1],
      ["canals", 0, 1],
      ["irrigation", 0, 1],
      ["instruments", 0, 1],
    ]);
    expect(await snapshot()).toEqual(before);
  });

  test("a value where there was none completes the row", async () => {
    await bringIn({ ...whole, irrigation: [{ ...delivery, duration_s: undefined }] });
    const { counts } = await bringIn({ irrigation: [delivery] });
    expect(counts.irrigation).toMatchObject({ accepted: 1, repeated: 0, held: 0 });
    expect((await snapshot()).canal_facts).toMatchObject([{ flow_s: 60, volume_ml: 4.5 }]);
  });

  test("a contradiction is held and names both values; the first stands", async () => {
    await bringIn(whole);
    const { counts } = await bringIn({ sessions: [{ ...visit, clinician: "C02" }] });
    expect(counts.sessions).toMatchObject({ read: 1, accepted: 0, repeated: 0, held: 1 });
    const [row] = await heldRows();
    expect(row?.reasons[0]?.sentence).toContain(
      'sessions.csv, line 2, clinician: found "C02"; an accepted row with the same key has "C01"',
    );
    expect((await snapshot()).canal_facts).toMatchObject([{ clinician: "C01" }]);
  });

  test("of several rows with one key in one file the first stands, later ones complete, repeat or are held", async () => {
    const bare = { session_id: "V-1", canal: "MB1", preparation: "rotary" };
    const { counts } = await bringIn({
      sessions: [visit],
      canals: [
        bare,
        { ...bare, timer_reset: "yes" },
        bare,
        { ...bare, timer_reset: "no" },
        { ...bare, filled: true },
      ],
    });
    expect(counts.canals).toMatchObject({ read: 5, accepted: 3, repeated: 1, held: 1 });
    const { rows } = await pool().query("select timer_reset, filled from canals");
    expect(rows).toEqual([{ timer_reset: "yes", filled: true }]);
  });

  test("one key repeated a thousand times settles in few rounds", async () => {
    const { counts } = await bringIn({
      ...whole,
      irrigation: Array.from({ length: 1000 }, (_, n) => ({ ...delivery, tip_short_mm: n % 3 })),
    });
    expect(counts.irrigation).toMatchObject({ read: 1000, accepted: 1, repeated: 333, held: 666 });
  });

  test("a visit known in two practices holds a row that does not say which, naming both", async () => {
    await bringIn({ sessions: [visit, { ...visit, practice: "ELM" }], canals: [canal] });
    const [row] = await heldRows();
    expect(row?.kind).toBe("several-practices");
    expect(row?.reasons[0]?.sentence).toContain("ELM and OAK");
  });

  test("an identical held row is stored once and counted each time", async () => {
    const wrong = {
      line: 2,
      key: "V-1 MB1 9",
      session_id: "V-1",
      canal: "MB1",
      raw: { volume_ml: "-3" },
      reasons: [{ column: "volume_ml", found: "-3", remedy: "r", sentence: "s" }],
    };
    await bringIn({ ...whole, irrigation: [wrong] });
    const { counts } = await bringIn({ irrigation: [wrong] });
    expect(counts.irrigation).toMatchObject({ read: 1, held: 1 });
    expect(await heldRows()).toHaveLength(1);
  });

  test("a figure that was kept follows the next import at once", async () => {
    const quarter = period("2026-Q3");
    if (!quarter) throw new Error("2026-Q3 is a period");
    const volume = async () =>
      (
        await figures(holderReach().figures, {
          measures: ["volume"],
          periods: [quarter],
          by: ["group"],
        })
      ).map((figure) => figure.estimate);
    await bringIn({ sessions: [visit], canals: [canal] });
    expect(await volume()).toEqual([null]);
    await bringIn({ irrigation: [delivery] });
    expect(await volume()).toEqual([4.5]);
  });

  test("a held delivery leaves its canal without a sum", async () => {
    const wrong = {
      line: 3,
      key: "V-1 MB1 9",
      session_id: "V-1",
      canal: "MB1",
      raw: { volume_ml: "-3" },
      reasons: [],
    };
    await bringIn({ ...whole, irrigation: [delivery, wrong] });
    expect((await snapshot()).canal_facts).toMatchObject([{ flow_s: null, volume_ml: null }]);
  });
});

describe("an import that is broken off", () => {
  test("is said to be, while one that runs is left alone", async () => {
    const started = "now() - interval '1 minute'";
    await pool().query(
      `insert into imports (by, state, started_at) values ('n', 'reading', ${started}), ('n', 'publishing', ${started})`,
    );
    const running = await pool().connect();
    await markRunning(running, 2);
    const states = (await recentImports(holderReach().records, 5)).map((one) => one.state);
    running.release(true);
    expect(states).toEqual(["publishing", "failed"]);
  });
});

describe("order of arrival", () => {
  test("children wait for their parents in whatever order and join by themselves", async () => {
    await bringIn(whole);
    const expected = await snapshot();
    await anotherEmptyDatabase();
    const first = await bringIn({ irrigation: [delivery], instruments: [use] });
    expect(first.counts.irrigation).toMatchObject({ held: 1, accepted: 0 });
    expect((await heldRows()).map((row) => row.kind)).toEqual(["waiting", "waiting"]);
    await bringIn({ canals: [canal] });
    await bringIn({ sessions: [visit] });
    expect(await snapshot()).toEqual(expected);
    const { rows } = await pool().query(
      "select sum(held)::int as held, sum(accepted)::int as accepted from import_files",
    );
    expect(rows).toEqual([{ held: 0, accepted: 4 }]);
  });

  test("files of one import may come in any order", async () => {
    await bringIn(whole);
    const expected = await snapshot();
    await anotherEmptyDatabase();
    await bringIn(whole, [...tableNames].reverse());
    expect(await snapshot()).toEqual(expected);
  });
});

describe("use after separation", () => {
  const later = {
    ...visit,
    session_id: "V-2",
    started_at: "2026-07-04T08:10:00.000Z",
    ended_at: undefined,
  };
  const parted = { ...use, separated: 1 };
  const after = { ...use, session_id: "V-2" };

  test.each([
    ["the separation came first", [{ instruments: [parted] }, { instruments: [after] }]],
    ["the later use came first", [{ instruments: [after] }, { instruments: [parted] }]],
  ])("is held when %s", async (_, imports) => {
    await bringIn({ sessions: [visit, later], canals: [canal, { ...canal, session_id: "V-2" }] });
    for (const rows of imports) await bringIn(rows);
    expect((await heldRows()).map((row) => [row.kind, row.raw.session_id])).toEqual([
      ["after-separation", "V-2"],
    ]);
    expect((await snapshot()).visit_facts).toMatchObject([
      { separations: 1, uses_held: 0 },
      { separations: 0, uses: 0, uses_held: 1 },
    ]);
  });

  test("is held once, however often the file comes, and not at all once they are undone", async () => {
    await bringIn({ sessions: [visit, later], canals: [canal, { ...canal, session_id: "V-2" }] });
    await bringIn({ instruments: [parted, after] });
    const once = await snapshot();
    const again = await bringIn({ instruments: [parted, after] });
    expect(await snapshot()).toEqual(once);
    expect(again.counts.instruments).toMatchObject({ read: 2, repeated: 1, held: 1 });
    expect((await heldRows()).length).toBe(1);
    await undoImport(holderReach().records, again.importId);
    expect(await snapshot()).toEqual(once);
  });
});
