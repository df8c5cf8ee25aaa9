import { describe, expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { pool } from "@/lib/store/database";
import { UndoRefused } from "@/lib/store/import/take-back";
import { undoImport } from "@/lib/store/import/undo-import";
import { bringIn, canal, delivery, snapshot, use, visit } from "../bring-in";
import { eachOnEmptyDatabase, heldRows } from "../empty-database";
import { putVersions } from "../figures/put-in-force";

// Expected values follow from the rules of the record format; worked by hand.
const reach = holderReach().records;

eachOnEmptyDatabase();

const whole = { sessions: [visit], canals: [canal], irrigation: [delivery], instruments: [use] };

describe("undo", () => {
  test("takes all of an import back", async () => {
    const { importId } = await bringIn(whole);
    await undoImport(reach, importId);
    const left = await snapshot();
    expect(left.canal_facts).toEqual([]);
    expect(left.visit_facts).toEqual([]);
    const { rows } = await pool().query("select count(*)::int as rows from sessions");
    expect(rows).toEqual([{ rows: 0 }]);
  });

  test("keeps a practice that somebody has written a protocol for, and its protocol", async () => {
    const { importId } = await bringIn(whole);
    await putVersions([visit.practice as string], defaults.slice(0, 1));
    await undoImport(reach, importId);
    expect((await snapshot()).visit_facts).toEqual([]);
    const { rows } = await pool().query(
      "select p.code, v.criterion from practices p join criterion_versions v on v.practice = p.code",
    );
    expect(rows).toEqual([{ code: visit.practice, criterion: defaults[0]?.id }]);
  });

  test("passes a row to its next witness, which keeps what it bore", async () => {
    const { importId } = await bringIn(whole);
    await bringIn({ ...whole, irrigation: [{ ...delivery, duration_s: undefined }] });
    await undoImport(reach, importId);
    expect((await snapshot()).canal_facts).toMatchObject([{ volume_ml: 4.5, flow_s: null }]);
    const { rows } = await pool().query("select count(*)::int as left from witnesses");
    expect(rows).toEqual([{ left: 0 }]);
  });

  test("empties what only the undone import completed", async () => {
    await bringIn({ ...whole, irrigation: [{ ...delivery, duration_s: undefined }] });
    const before = await snapshot();
    const { importId } = await bringIn({ irrigation: [delivery] });
    await undoImport(reach, importId);
    expect(await snapshot()).toEqual(before);
  });

  test("is refused while another import's row hangs on it, and says which", async () => {
    const { importId } = await bringIn({ sessions: [visit] });
    const children = await bringIn({ canals: [canal] });
    await expect(undoImport(reach, importId)).rejects.toThrow(UndoRefused);
    await expect(undoImport(reach, importId)).rejects.toThrow(
      `undo import ${children.importId} first`,
    );
    expect((await snapshot()).canal_facts).toHaveLength(1);
  });

  test("judges again what was held for a contradiction with the rows taken back", async () => {
    const { importId } = await bringIn({ sessions: [{ ...visit, clinician: "C09" }] });
    await bringIn({ sessions: [visit] });
    expect((await heldRows()).map((row) => row.kind)).toEqual(["contradiction"]);
    await undoImport(reach, importId);
    expect(await heldRows()).toEqual([]);
    const { rows } = await pool().query("select clinician from sessions");
    expect(rows).toEqual([{ clinician: "C01" }]);
    const places = await pool().query("select code from clinicians");
    expect(places.rows).toEqual([{ code: "C01" }]);
  });

  test("a use after a separation stays the held row that it was, by number", async () => {
    const later = { ...visit, session_id: "V-2", started_at: "2026-07-04T08:10:00.000Z" };
    await bringIn({
      sessions: [visit, { ...later, ended_at: undefined }],
      canals: [canal, { ...canal, session_id: "V-2" }],
      instruments: [
        { ...use, separated: 1 },
        { ...use, session_id: "V-2" },
      ],
    });
    const held = await heldRows();
    expect(held.map((row) => row.kind)).toEqual(["after-separation"]);
    const { importId } = await bringIn({ sessions: [{ ...visit, session_id: "V-3" }] });
    await undoImport(reach, importId);
    expect(await heldRows()).toEqual(held);
  });

  test("a second undo of the same import is refused", async () => {
    const { importId } = await bringIn(whole);
    await undoImport(reach, importId);
    await expect(undoImport(reach, importId)).rejects.toThrow("undone already");
  });
});
