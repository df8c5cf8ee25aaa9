import { describe, expect, test } from "vitest";
import { holderReach, recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { correctionsMade } from "@/lib/store/corrections/corrections-made";
import { differencesNow } from "@/lib/store/corrections/differences";
import { setNewerVersions } from "@/lib/store/corrections/newer-versions-rule";
import { takeBackCorrection } from "@/lib/store/corrections/take-back";
import { takeNewer } from "@/lib/store/corrections/take-newer";
import { pool } from "@/lib/store/database";
import { undoImport } from "@/lib/store/import/undo-import";
import { bringIn, canal, delivery, snapshot, use, visit } from "../bring-in";
import { eachOnEmptyDatabase, heldRows } from "../empty-database";
import { countsThatDoNotAddUp, factsAnew } from "./counts-and-facts";

// Expected values follow from the rules of corrections in README and brief; worked by hand.
const reach = holderReach().records;
const whole = { sessions: [visit], canals: [canal], irrigation: [delivery], instruments: [use] };
const all = { limit: 100, offset: 0 };

eachOnEmptyDatabase();

async function takeAll() {
  return takeNewer(
    reach,
    (await differencesNow(reach, all)).rows.map((row) => row.id),
  );
}

describe("a newer version of an accepted row", () => {
  test("is shown beside it, taken, and moves its figures to its day and clinician", async () => {
    await bringIn(whole);
    const before = await snapshot();
    // 23:30 UTC on 3 July is 4 July in London.
    const newer = {
      ...visit,
      clinician: "C02",
      started_at: "2026-07-03T23:30:00.000Z",
      ended_at: "2026-07-03T23:50:00.000Z",
    };
    const { importId } = await bringIn({ sessions: [newer] });
    const [difference] = (await differencesNow(reach, all)).rows;
    expect(difference).toMatchObject({
      table: "sessions",
      practice: "OAK",
      accepted: { clinician: "C01" },
      newer: { clinician: "C02" },
      broken: false,
    });
    expect(await takeAll()).toBe(1);
    expect((await snapshot()).canal_facts).toMatchObject([
      { clinician: "C02", local_day: new Date("2026-07-04T00:00:00Z"), volume_ml: 4.5 },
    ]);
    const [made] = (await correctionsMade(reach, all)).rows;
    expect(made).toMatchObject({ key: "V-1", rule: "asked", by: "command line", undoneBy: null });
    const day = await pool().query("select day::text from corrections");
    expect(day.rows).toEqual([{ day: "2026-07-03" }]);
    expect(await countsThatDoNotAddUp()).toEqual([]);
    await expect(undoImport(reach, importId)).rejects.toThrow("take correction 1 back first");

    await takeBackCorrection(reach, made?.id ?? 0);
    expect((await snapshot()).canal_facts).toEqual(before.canal_facts);
    expect((await heldRows()).map((row) => row.kind)).toEqual(["contradiction"]);
    await undoImport(reach, importId);
    expect(await snapshot()).toEqual(before);
  });

  test("keeps what it does not say, and the old file brought again asks nothing anew", async () => {
    await bringIn(whole);
    await bringIn({ irrigation: [{ ...delivery, duration_s: undefined, volume_ml: 6 }] });
    await takeAll();
    const { counts } = await bringIn({ irrigation: [delivery] });
    expect(counts.irrigation).toMatchObject({ read: 1, repeated: 1, held: 0 });
    const { rows } = await pool().query("select volume_ml, duration_s from irrigation");
    expect(rows).toEqual([{ volume_ml: 6, duration_s: 60 }]);
  });

  test("is not taken where the visit would end before it starts", async () => {
    await bringIn({ sessions: [visit] });
    await bringIn({
      sessions: [{ ...visit, started_at: "2026-07-03T10:00:00.000Z", ended_at: undefined }],
    });
    expect((await differencesNow(reach, all)).rows[0]?.broken).toBe(true);
    expect(await takeAll()).toBe(0);
  });

  test("two versions of one row are not taken together", async () => {
    await bringIn(whole);
    await bringIn({ irrigation: [5, 6].map((volume_ml) => ({ ...delivery, volume_ml })) });
    expect(await takeAll()).toBe(0);
    const [first] = (await differencesNow(reach, all)).rows;
    expect(await takeNewer(reach, [first?.id ?? ""])).toBe(1);
  });

  test("that a separation did not happen lets the later uses in again", async () => {
    const later = {
      ...visit,
      session_id: "V-2",
      started_at: "2026-07-04T08:10:00.000Z",
      ended_at: undefined,
    };
    await bringIn({
      sessions: [visit, later],
      canals: [canal, { ...canal, session_id: "V-2" }],
      instruments: [
        { ...use, separated: 1 },
        { ...use, session_id: "V-2" },
      ],
    });
    expect((await heldRows()).map((row) => row.kind)).toEqual(["after-separation"]);
    await bringIn({ instruments: [use] });
    await takeAll();
    expect(await heldRows()).toEqual([]);
    await takeBackCorrection(reach, 1);
    expect((await heldRows()).map((row) => row.kind).sort()).toEqual([
      "after-separation",
      "contradiction",
    ]);
    expect(await snapshot()).toEqual(await factsAnew());
    expect(await countsThatDoNotAddUp()).toEqual([]);
  });

  test("of another practice is neither seen nor taken", async () => {
    await bringIn(whole);
    await bringIn({ sessions: [{ ...visit, clinician: "C02" }] });
    const elm: Viewer = {
      userId: "u",
      name: "Elm keeper",
      email: "e@elm.example",
      grants: [{ role: "record-keeper", practice: "ELM", clinicianKey: null }],
    };
    const theirs = recordsReach(elm);
    expect(await differencesNow(theirs, all)).toEqual({ rows: [], count: 0 });
    const [row] = (await differencesNow(reach, all)).rows;
    expect(await takeNewer(theirs, [row?.id ?? ""])).toBe(0);
    expect(await setNewerVersions(theirs, "OAK", "newer")).toBe(false);
    await takeAll();
    await expect(takeBackCorrection(theirs, 1)).rejects.toThrow("not there to take back");
  });
});

describe("by the practice's rule", () => {
  const sixMl = { irrigation: [{ ...delivery, volume_ml: 6 }] };
  const volume = async () =>
    (await pool().query("select volume_ml from canal_facts")).rows.map((row) => row.volume_ml);

  test("a newer version from a later import stands", async () => {
    await bringIn(whole);
    await setNewerVersions(reach, "OAK", "newer");
    const { counts } = await bringIn(sixMl);
    expect(counts.irrigation).toMatchObject({ read: 1, accepted: 1, held: 0 });
    expect(await volume()).toEqual([6]);
    const [made] = (await correctionsMade(reach, all)).rows;
    expect(made).toMatchObject({ rule: "newer", by: "rule of the practice" });
    // Taken back by hand, it is asked when it comes again.
    await takeBackCorrection(reach, made?.id ?? 0);
    await bringIn(sixMl);
    expect((await heldRows()).map((row) => row.kind)).toEqual(["contradiction"]);
    expect(await snapshot()).toEqual(await factsAnew());
  });

  test("or is let go, and counts as let go in its file", async () => {
    await bringIn(whole);
    await setNewerVersions(reach, "OAK", "first");
    const { counts } = await bringIn(sixMl);
    expect(counts.irrigation).toMatchObject({ read: 1, held: 0, letGo: 1 });
    expect(await volume()).toEqual([4.5]);
  });

  test("never within one import", async () => {
    await bringIn({ sessions: [visit], canals: [canal] });
    await setNewerVersions(reach, "OAK", "newer");
    await bringIn({ irrigation: [delivery, { ...delivery, volume_ml: 6 }] });
    expect((await heldRows()).map((row) => row.kind)).toEqual(["contradiction"]);
  });
});
