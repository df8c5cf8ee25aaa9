import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Mapping, mappingSchema } from "@/lib/intake/mapping/mapping";
import { readMapped } from "@/lib/intake/mapping/read-mapped";
import { missingFields, propose } from "@/lib/intake/propose/propose";
import { recognise } from "@/lib/intake/recognise/recognise";
import type { GoodRow } from "@/lib/intake/sheet";
import { context } from "../read-text";
import { inventedVisits } from "./invented-visits";
import { chartText, pumpText } from "./written-files";

// Expected values are the project's own: the invented facts from which the files are written; nothing of the reader is used to write them.

const { visits, deliveries } = inventedVisits();
const canals = visits.flatMap((visit) => visit.canals.map((canal) => ({ ...canal, visit })));
const quadrants = { UR: 1, UL: 2, LL: 3, LR: 4 };
let folder = "";

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "canal-audit-third-"));
  await writeFile(join(folder, "seances.txt"), chartText(visits));
  await writeFile(join(folder, "pompes.ndjson"), pumpText(deliveries));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test("there is something to read", () => {
  expect(visits.length).toBeGreaterThan(150);
  expect(deliveries.length).toBeGreaterThan(1000);
});

describe("charts with a title above, Palmer's teeth, centimetres and decimal minutes", () => {
  test("are read by their mapping, every row and every value", async () => {
    const tables = await mapped("seances.txt", await mappingOf("chart"));
    expect(tables.get("sessions")?.map(({ values }) => without("patient", values))).toEqual(
      canals.map(({ visit }) =>
        recorded({
          ...{ session_id: visit.id, practice: visit.site, chair: visit.chair },
          ...{ clinician: visit.clinician, tooth_notation: "palmer" },
          tooth: `${quadrants[visit.quadrant]}${visit.position}`,
          started_at: new Date(visit.start).toISOString(),
          ended_at: new Date(visit.end).toISOString(),
          ...{ treatment: visit.treatment, outcome: visit.outcome, difficulty: visit.difficulty },
        }),
      ),
    );
    expect(tables.get("canals")?.map(({ values }) => values)).toEqual(
      canals.map((canal) =>
        recorded({
          ...{ session_id: canal.visit.id, practice: canal.visit.site, canal: canal.name },
          ...{ working_length_mm: canal.lengthMm, length_method: canal.method },
          ...{ preparation: canal.technique, preparation_s: canal.preparationS },
          ...{ timer_reset: canal.reset, filled: canal.filled },
        }),
      ),
    );
    expect(tables.get("instruments")?.map(({ values }) => values)).toEqual(
      canals
        .filter(({ files }) => files > 0)
        .map(({ visit, name, technique, files, separated }) => ({
          ...{ session_id: visit.id, practice: visit.site, canal: name, seq: 1 },
          ...{ kind: technique, uses: files, separated },
        })),
    );
    expect(tables.get("steps")?.map(({ values }) => values)).toEqual(
      canals
        .filter(({ visit }) => visit.dam !== undefined)
        .map(({ visit }) =>
          recorded({
            ...{ session_id: visit.id, practice: visit.site, step: "dam", status: visit.dam },
            reason: visit.dam === "excepted" ? "not-possible" : undefined,
          }),
        ),
    );
  });

  test("are proposed so but for what an empty dam and an impossible one mean", async () => {
    const found = await recognise(join(folder, "seances.txt"), "seances.txt");
    expect(found.layout).toMatchObject({ separator: "|", headerLine: 4, decimal: "," });
    const { mapping, reasons } = propose(found, "seances.txt");
    expect(missingFields(mapping)).toEqual([]);
    expect(reasons["steps status"]).toContain('Say what an empty cell, "impossible" means.');
    const proposed = await mapped("seances.txt", mapping, ["steps"]);
    const right = await mapped("seances.txt", await mappingOf("chart"), ["steps"]);
    expect([...proposed.keys()]).toEqual([...right.keys()]);
    for (const [table, rows] of right) expect(proposed.get(table), table).toEqual(rows);
  });
});

describe("a pump's log without a visit's number", () => {
  const written = deliveries.map((one) =>
    recorded({
      ...{ practice: one.site, canal: one.canal, irrigant: one.irrigant },
      started_at: new Date(one.at).toISOString(),
      ...{ concentration_pct: one.strengthPct, volume_ml: one.volumeMl },
      ...{ flow_ml_min: one.flowMlMin, duration_s: one.durationS, dwell_s: one.dwellS },
      ...{ delivery: one.delivery, basis: "metered" },
    }),
  );
  const finding = deliveries.map(({ visit, ...one }) =>
    recorded({
      ...{ practice: one.site, chair: one.chair, at: new Date(one.at).toISOString(), minutes: 5 },
      tooth:
        visit && one.toothWritten ? `${quadrants[visit.quadrant]}${visit.position}` : undefined,
    }),
  );

  test("is read with its units, and each row says how to find its visit", async () => {
    const tables = await mapped("pompes.ndjson", await mappingOf("pump"));
    const rows = tables.get("irrigation") ?? [];
    expect(rows.map(({ values }) => without("seq", values))).toEqual(written);
    expect(rows.map(({ match }) => match)).toEqual(finding);
    expect(tables.get("upkeep")?.map(({ values }) => [values.practice, values.day])).toEqual(
      ["2026-10-19", "2026-10-26"].flatMap((day) => [
        ["A", day],
        ["B", day],
      ]),
    );
  });

  test("no two rows of a chair, day and canal have one number, and they follow the time", async () => {
    const rows = (await mapped("pompes.ndjson", await mappingOf("pump"))).get("irrigation") ?? [];
    const before = new Map<string, number>();
    for (const [place, { values, match }] of rows.entries()) {
      // Those of no visit are at midnight.
      if (!deliveries[place]?.visit) continue;
      const group = [values.practice, match?.chair, match?.at.slice(0, 10), values.canal].join();
      expect(Number(values.seq), group).toBeGreaterThan(before.get(group) ?? -1);
      before.set(group, Number(values.seq));
    }
  });

  test("a log that begins later gives the same rows the same numbers", async () => {
    const later = deliveries.slice(137);
    await writeFile(join(folder, "later.ndjson"), pumpText(later));
    const mapping = await mappingOf("pump");
    const all = (await mapped("pompes.ndjson", mapping)).get("irrigation") ?? [];
    const some = (await mapped("later.ndjson", mapping)).get("irrigation") ?? [];
    expect(some.map(({ values }) => values)).toEqual(all.slice(137).map(({ values }) => values));
  });

  test("is proposed with its visits found by time, chair and tooth", async () => {
    const found = await recognise(join(folder, "pompes.ndjson"), "pompes.ndjson");
    const { mapping } = propose(found, "pompes.ndjson");
    const irrigation = mapping.tables.find(({ table }) => table === "irrigation");
    const right = (await mappingOf("pump")).tables.find(({ table }) => table === "irrigation");
    expect(missingFields({ ...mapping, tables: irrigation ? [irrigation] : [] })).toEqual([]);
    // A person says how far clocks differ, which rows are deliveries, and that the numbers are a pump's.
    const { basis: _, ...fields } = right?.fields ?? {};
    expect(Object.keys(irrigation?.fields ?? {}).sort()).toEqual(Object.keys(fields).sort());
    const asProposed = {
      ...mapping,
      tables: irrigation && right ? [{ ...irrigation, only: right.only, minutes: 5 }] : [],
    };
    const rows = (await mapped("pompes.ndjson", asProposed)).get("irrigation") ?? [];
    expect(rows.map(({ values }) => without("seq", values))).toEqual(
      written.map((row) => without("basis", row)),
    );
    expect(rows.map(({ match }) => match)).toEqual(finding);
  });
});

async function mappingOf(name: string): Promise<Mapping> {
  const path = join(import.meta.dirname, "../../data/third", `${name}.mapping.json`);
  return mappingSchema.parse(JSON.parse(await readFile(path, "utf8")));
}

/** The rows of each table, all of which must be right but in those left out. */
async function mapped(name: string, mapping: Mapping, leftOut: readonly string[] = []) {
  const tables = new Map<string, GoodRow[]>();
  for await (const sheet of readMapped(join(folder, name), name, mapping, context)) {
    const rows: GoodRow[] = [];
    for await (const row of sheet.rows) {
      if (row.verdict === "good") rows.push(row);
      else if (!leftOut.includes(sheet.table)) throw new Error(row.reasons[0]?.sentence);
    }
    if (!leftOut.includes(sheet.table)) tables.set(sheet.table, rows);
  }
  return tables;
}

function recorded(row: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(row).filter(([, value]) => value !== undefined));
}

function without(name: string, row: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const { [name]: _, ...others } = row;
  return others;
}
