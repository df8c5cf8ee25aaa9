import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { fits } from "@/lib/intake/mapping/fits";
import { type Mapping, mappingSchema } from "@/lib/intake/mapping/mapping";
import { readMapped } from "@/lib/intake/mapping/read-mapped";
import { missingFields, propose } from "@/lib/intake/propose/propose";
import { recognise } from "@/lib/intake/recognise/recognise";
import type { GoodRow, HeldRow } from "@/lib/intake/sheet";
import { context } from "../read-text";

// Expected values are computed by a plain reading of the same files below, which shares no code with what is tested.

const folder = join(import.meta.dirname, "../../data/foreign");

async function mappingOf(name: string): Promise<Mapping> {
  return mappingSchema.parse(
    JSON.parse(await readFile(join(folder, `${name}.mapping.json`), "utf8")),
  );
}

async function mapped(name: string, mapping: Mapping) {
  const tables = new Map<string, (GoodRow | HeldRow)[]>();
  for await (const sheet of readMapped(
    join(folder, `${name}.csv`),
    `${name}.csv`,
    mapping,
    context,
  )) {
    const rows: (GoodRow | HeldRow)[] = [];
    for await (const row of sheet.rows) rows.push(row);
    tables.set(sheet.table, rows);
  }
  return tables;
}

const values = (rows: (GoodRow | HeldRow)[] | undefined) =>
  (rows ?? []).map((row) => {
    if (row.verdict === "held") throw new Error(row.reasons[0]?.sentence);
    return row.values;
  });

async function plain(name: string, encoding: string, separator: string) {
  const text = new TextDecoder(encoding).decode(await readFile(join(folder, `${name}.csv`)));
  const [head = "", ...lines] = text.split(/\r?\n/).filter(Boolean);
  const names = head.split(separator);
  return lines.map((line) => {
    const cells = line.split(separator);
    return Object.fromEntries(names.map((one, place) => [one, cells[place] ?? ""]));
  });
}

describe("a motor's log", () => {
  test("is read by its mapping, every row and every value", async () => {
    const expected = (await plain("motor-log", "windows-1252", ";")).map((row) => {
      const [minutes, seconds] = (row["Dauer (min:s)"] ?? "").split(":");
      const number = (text: string | undefined) =>
        text ? Number(text.replace(",", ".")) : undefined;
      const solution = row.Lösung ?? "";
      return {
        session_id: row.Vorgang,
        canal: row.Kanal,
        seq: Number(row["Spülung Nr"]),
        irrigant: solution.startsWith("Hypochlorit") ? "naocl" : "edta",
        concentration_pct: number(/[\d,]+/.exec(solution)?.[0]),
        volume_ml: number(row["Menge (ml)"]),
        flow_ml_min: number(row["Fluss (ml/min)"]),
        duration_s: seconds === undefined ? undefined : Number(minutes) * 60 + Number(seconds),
        delivery: row.Abgabe === "Spritze" ? "syringe" : "continuous",
      };
    });
    expect(expected.length).toBe(610);
    const read = values(
      (await mapped("motor-log", await mappingOf("motor-log"))).get("irrigation"),
    );
    expect(read.map((row) => ({ ...expected[0], ...blank, ...row }))).toEqual(
      expected.map((row) => ({ ...blank, ...row })),
    );
  });

  test("is proposed as it should be read, from its names and contents alone", async () => {
    const found = await recognise(join(folder, "motor-log.csv"), "motor-log.csv");
    const { mapping } = propose(found, "motor-log.csv");
    expect(missingFields(mapping)).toEqual([]);
    expect(await mapped("motor-log", mapping)).toEqual(
      await mapped("motor-log", await mappingOf("motor-log")),
    );
  });
});

/** Fields that a delivery may lack. */
const blank = { volume_ml: undefined, flow_ml_min: undefined, duration_s: undefined };

describe("a chart's export", () => {
  test("feeds visits, canals, instruments and the dam", async () => {
    const rows = await plain("chart-export", "utf-16le", "\t");
    const tables = await mapped("chart-export", await mappingOf("chart-export"));
    const sessions = values(tables.get("sessions"));
    const canals = values(tables.get("canals"));
    const uses = values(tables.get("instruments"));
    expect(sessions.length).toBe(rows.length);
    expect(new Set(sessions.map((row) => JSON.stringify(row))).size).toBe(49);
    expect(
      canals.map((row) => [row.session_id, row.canal, row.working_length_mm, row.timer_reset]),
    ).toEqual(
      rows.map((row) => [
        row.Visit,
        row.Canal,
        row.WL ? Number(row.WL) : undefined,
        { x: "yes", "-": "no" }[row.Reset ?? ""],
      ]),
    );
    expect(uses.map((row) => [row.kind, row.uses, row.separated])).toEqual(
      rows.map((row) => [row.Technique, Number(row["Files used"]), Number(row.Separated)]),
    );
    const teeth = rows.map((row) => {
      const number = Number(row["Tooth (#)"]);
      const quadrant = Math.ceil(number / 8);
      return `${quadrant}${quadrant % 2 === 1 ? quadrant * 8 + 1 - number : number - (quadrant - 1) * 8}`;
    });
    expect(sessions.map((row) => row.tooth)).toEqual(teeth);
    const starts = rows.map((row) => {
      const [, month, day, year, hour, minute, half] =
        /(\d+)\/(\d+)\/(\d+) (\d+):(\d+) (AM|PM)/.exec(row.Start ?? "") ?? [];
      const hours = (Number(hour) % 12) + (half === "PM" ? 12 : 0);
      // London was an hour ahead of UTC all that summer.
      return new Date(
        Date.UTC(Number(year), Number(month) - 1, Number(day), hours - 1, Number(minute)),
      ).toISOString();
    });
    expect(sessions.map((row) => row.started_at)).toEqual(starts);
  });

  test("an excepted dam has its reason, an empty one is not done, an unknown one is no row", async () => {
    const rows = (await plain("chart-export", "utf-16le", "\t")).filter((row) => row.Dam !== "?");
    const steps = values(
      (await mapped("chart-export", await mappingOf("chart-export"))).get("steps"),
    );
    expect(steps.map((row) => [row.step, row.status, row.reason])).toEqual(
      rows.map((row) => [
        "dam",
        { x: "done", "": "not-done", "n/p": "excepted" }[row.Dam ?? ""],
        row.Dam === "n/p" ? "not-possible" : undefined,
      ]),
    );
  });

  test("its proposal differs in what only a person can say: what an empty dam and n/p mean", async () => {
    const found = await recognise(join(folder, "chart-export.csv"), "chart-export.csv");
    const { mapping } = propose(found, "chart-export.csv");
    expect(missingFields(mapping)).toEqual([]);
    const proposed = await mapped("chart-export", mapping);
    const right = await mapped("chart-export", await mappingOf("chart-export"));
    for (const table of ["sessions", "canals", "instruments"])
      expect(proposed.get(table), table).toEqual(right.get(table));
    expect(proposed.get("steps")?.filter(({ verdict }) => verdict === "held").length).toBe(10);
  });
});

test("a file is recognised again by the names of its columns, in any order", async () => {
  const mapping = await mappingOf("motor-log");
  expect(fits(mapping, [...mapping.columns].reverse())).toBe("same");
  expect(fits(mapping, [...mapping.columns, "Bemerkung"])).toBe("has all");
  expect(
    fits(
      mapping,
      mapping.columns.filter((name) => name !== "Datum"),
    ),
  ).toBe("has all");
  expect(
    fits(
      mapping,
      mapping.columns.filter((name) => name !== "Kanal"),
    ),
  ).toBeUndefined();
});

test("a column that the mapping reads and the file lacks is named", async () => {
  const mapping = await mappingOf("motor-log");
  const other = { ...mapping, file: (await mappingOf("chart-export")).file };
  await expect(mapped("chart-export", other)).rejects.toThrow(
    /the mapping "Motor log" reads the columns "Vorgang", "Kanal", .* which are not in it/,
  );
});
