import { describe, expect, test } from "vitest";
import { heldAgain } from "@/lib/reports/held-again";
import { recordLine } from "@/lib/reports/record-csv";
import type { HeldToGo } from "@/lib/store/way-out/held-to-go";

// Expected values are worked by hand from the rules of the record format.

const zone = "Europe/London";
const delivery = {
  ...{ session_id: "V-1", canal: "MB1", seq: "1", irrigant: "naocl", delivery: "syringe" },
  volume_ml: "1.234",
};
const row = (change: Partial<HeldToGo>): HeldToGo => ({
  ...{ table: "irrigation", kind: "check", practice: null, session_id: "V-1", canal: "MB1" },
  ...{ raw: delivery, values: null, reasons: [] },
  ...change,
});
const about = (column: string) => [{ column, found: "", remedy: "", sentence: "" }];

describe("a held row on its way out", () => {
  test("goes as it was read where its cells alone are wrong", () => {
    const raw = { ...delivery, volume_ml: "lots" };
    expect(heldAgain(row({ raw }), zone, false)).toEqual({ cells: raw, ragged: false });
  });

  test("is marked in the cell that its reason names where its cells alone would be right", () => {
    // As of a file whose decimal sign is a comma: the cell was not in its notation.
    expect(heldAgain(row({ reasons: about("volume_ml") }), zone, false)).toEqual({
      cells: { ...delivery, volume_ml: "? 1.234" },
      ragged: false,
    });
  });

  test("a time that was to come is held when it has come", () => {
    const raw = { ...delivery, started_at: "2026-11-25T10:00:00Z" };
    const again = heldAgain(row({ raw, reasons: about("started_at") }), zone, false);
    expect(again?.cells.started_at).toBe("? 2026-11-25T10:00:00Z");
  });

  test("a visit of a practice that was not the sender's keeps what tells it", () => {
    const values = {
      ...{ session_id: "V-1", practice: "ELM", chair: "1", clinician: "A", patient: "h" },
      ...{ started_at: "2026-07-03T08:10:00+00:00", tooth: "26", tooth_notation: "palmer" },
      ...{ treatment: "primary", outcome: "completed" },
    };
    const kept = { table: "sessions", practice: "ELM", canal: null, values } as const;
    const again = heldAgain(row({ ...kept, kind: "outside-reach" }), zone, false);
    expect(again).toMatchObject({ cells: { practice: "ELM", session_id: "V-1" }, ragged: false });
    expect(Object.values(again?.cells ?? {}).filter((cell) => cell.startsWith("? "))).toHaveLength(
      1,
    );
    // A contradiction is held by the accepted row and goes as it is; its tooth is by ISO 3950.
    const contradiction = heldAgain(row({ ...kept, kind: "contradiction" }), zone, false);
    expect(contradiction?.cells).toMatchObject({ tooth: "26", tooth_notation: "fdi" });
  });

  test("has a cell too many where no cell could bear a mark, and is left where nothing was kept", () => {
    const raw = { session_id: "V-1", canal: "MB1", criterion: "isolation", reason: "not-possible" };
    expect(heldAgain(row({ table: "exceptions", raw }), zone, false)?.ragged).toBe(false);
    const spell = { person: "p", practice: "OAK", code: "A" };
    const people = row({
      table: "people",
      raw: spell,
      practice: "OAK",
      session_id: null,
      canal: null,
    });
    expect(heldAgain(people, zone, false)).toEqual({ cells: spell, ragged: false });
    expect(heldAgain(row({ raw: {} }), zone, false)).toBeUndefined();
  });
});

test("a row is written by RFC 4180, a ragged one with a cell too many", () => {
  const cells = { session_id: 'V "1"', kind: "allergy, mild", practice: "OAK" };
  expect(recordLine("incidents", cells)).toBe('"V ""1""","allergy, mild",OAK,,,\r\n');
  expect(recordLine("incidents", {}, true)).toBe(",,,,,,a cell too many\r\n");
});
