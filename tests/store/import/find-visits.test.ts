import { describe, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { letGo, takeBackLetGo } from "@/lib/store/import/let-go";
import type { CheckedRow } from "@/lib/store/import/staging";
import { undoImport } from "@/lib/store/import/undo-import";
import { bringIn, canal, delivery, snapshot, visit } from "../bring-in";
import { eachOnEmptyDatabase, heldRows } from "../empty-database";

// Expected values follow from the rule of matching (lib/store/import/find-visits); worked by hand.

eachOnEmptyDatabase();

/** 8:10 to 9:00 UTC at OAK-1, tooth 26, canal MB1; then 9:05 to 10:00, tooth 36, canals MB1 and D. */
const second = {
  ...visit,
  session_id: "V-2",
  started_at: "2026-07-03T09:05:00.000Z",
  ended_at: "2026-07-03T10:00:00.000Z",
  tooth: "36",
};
const visits = {
  sessions: [visit, second],
  canals: [canal, { ...canal, session_id: "V-2" }, { ...canal, session_id: "V-2", canal: "D" }],
};

const { session_id: _, ...unnamed } = delivery;

function at(match: CheckedRow["match"], values = {}, line = 2): CheckedRow {
  return {
    line,
    values: { ...unnamed, ...values },
    match: { minutes: 0, chair: "OAK-1", ...match },
  };
}

async function placed() {
  return (await snapshot()).canal_facts?.map((fact) => {
    const { session_id, canal, volume_ml } = fact as Record<string, unknown>;
    return [session_id, canal, volume_ml];
  });
}

describe("rows that name no visit", () => {
  test("join the one at that chair and time", async () => {
    const { counts } = await bringIn({
      ...visits,
      irrigation: [at({ at: "2026-07-03T08:20:00Z" }), at({ at: "2026-07-03T09:05:00Z" }, {}, 3)],
    });
    expect(counts.irrigation).toMatchObject({ read: 2, accepted: 2, held: 0 });
    expect(await placed()).toEqual([
      ["V-1", "MB1", 4.5],
      ["V-2", "D", null],
      ["V-2", "MB1", 4.5],
    ]);
  });

  test("are held where nothing was there at that time, and join by themselves when the visit comes", async () => {
    const { counts } = await bringIn({ irrigation: [at({ at: "2026-07-03T08:20:00Z" })] });
    expect(counts.irrigation).toMatchObject({ read: 1, accepted: 0, held: 1 });
    const [row] = await heldRows();
    expect(row?.kind).toBe("waiting");
    expect(row?.reasons[0]?.sentence).toBe(
      'irrigation.csv, line 2, session_id: found "chair OAK-1, 2026-07-03 08:20 UTC"; no visit there at that time yet; the row joins by itself when the visit arrives, or write its number.',
    );
    await bringIn(visits);
    expect(await heldRows()).toEqual([]);
    expect((await placed())?.[0]).toEqual(["V-1", "MB1", 4.5]);
  });

  test("a tolerance of minutes counts as within, and no more than that", async () => {
    const early = "2026-07-03T08:05:30Z";
    await bringIn({ ...visits, irrigation: [at({ at: early, minutes: 4 })] });
    expect(await heldRows()).toHaveLength(1);
    await bringIn({ irrigation: [at({ at: early, minutes: 5 }, { seq: 2 })] });
    expect((await placed())?.[0]).toEqual(["V-1", "MB1", 4.5]);
  });

  test("between two visits that both fit, the only one with the canal is meant", async () => {
    await bringIn({
      ...visits,
      irrigation: [at({ at: "2026-07-03T09:02:00Z", minutes: 5 }, { canal: "D" })],
    });
    expect(await heldRows()).toEqual([]);
    expect((await placed())?.[1]).toEqual(["V-2", "D", 4.5]);
  });

  test("where both have it the row is held with both named; the tooth tells them apart", async () => {
    const between = "2026-07-03T09:02:00Z";
    await bringIn({ ...visits, irrigation: [at({ at: between, minutes: 5 })] });
    const [row] = await heldRows();
    expect(row?.kind).toBe("several-visits");
    expect(row?.reasons[0]?.sentence).toContain("(OAK V-1, OAK V-2); write the number");
    await bringIn({ irrigation: [at({ at: between, minutes: 5, tooth: "36" }, { seq: 2 })] });
    // Neither canal is known to be complete while the row may be its own.
    expect(await placed()).toEqual([
      ["V-1", "MB1", null],
      ["V-2", "D", null],
      ["V-2", "MB1", null],
    ]);
    expect((await snapshot()).visit_facts).toMatchObject([{ held_rows: 1 }, { held_rows: 1 }]);
    await letGo(holderReach().records, [row?.id ?? ""], "cannot be told any more");
    expect((await placed())?.[2]).toEqual(["V-2", "MB1", 4.5]);
    expect((await snapshot()).visit_facts).toMatchObject([{ held_rows: 0 }, { held_rows: 0 }]);
    await takeBackLetGo(holderReach().records, [row?.id ?? ""]);
    expect((await placed())?.[2]).toEqual(["V-2", "MB1", null]);
  });

  test("a visit that comes later is one more that it may belong to, until its import is undone", async () => {
    const between = "2026-07-03T09:02:00Z";
    await bringIn({ ...visits, irrigation: [at({ at: between, minutes: 5 })] });
    const before = await snapshot();
    const third = { ...visit, session_id: "V-3", tooth: "37" };
    const { importId } = await bringIn({
      sessions: [third],
      canals: [{ ...canal, session_id: "V-3" }],
    });
    expect((await snapshot()).visit_facts).toMatchObject([
      { held_rows: 1 },
      { held_rows: 1 },
      { held_rows: 1 },
    ]);
    await undoImport(holderReach().records, importId);
    expect(await snapshot()).toEqual(before);
  });

  test("of a visit without an end, three hours are taken", async () => {
    const { ended_at: _, ...open } = visit;
    await bringIn({ sessions: [open], canals: [canal] });
    await bringIn({ irrigation: [at({ at: "2026-07-03T11:10:00Z" })] });
    await bringIn({ irrigation: [at({ at: "2026-07-03T11:11:00Z" }, { seq: 2 })] });
    expect((await snapshot()).held).toHaveLength(1);
    expect(await placed()).toEqual([["V-1", "MB1", 4.5]]);
  });

  test("the same file again is repeated", async () => {
    const irrigation = [at({ at: "2026-07-03T08:20:00Z" })];
    await bringIn({ ...visits, irrigation });
    const { counts } = await bringIn({ irrigation });
    expect(counts.irrigation).toMatchObject({ accepted: 0, repeated: 1, held: 0 });
  });
});
