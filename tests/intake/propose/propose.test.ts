import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { missingFields, propose } from "@/lib/intake/propose/propose";
import { unitNamed, unitOfName } from "@/lib/intake/propose/unit-names";
import { recognise } from "@/lib/intake/recognise/recognise";

// Expected values are worked by hand from the few lines of each file.

test("days that can be read two ways are proposed without an order, and it is asked for", async () => {
  const both = await proposed(chart("Date", ["03/04/2026 09:00", "05/06/2026 10:00"]));
  expect(both.fields("sessions").started_at).toEqual({ columns: ["Date"] });
  expect(both.reasons["sessions started_at"]).toContain("choose the order");
  const one = await proposed(chart("Date", ["03/04/2026 09:00", "25/06/2026 10:00"]));
  expect(one.fields("sessions").started_at).toMatchObject({ clock: { day: "day-month-year" } });
});

test("teeth of two notations are proposed without one, unless the name says it", async () => {
  const both = await proposed(chart("Tooth", ["14", "15"]));
  expect(both.fields("sessions").tooth_notation).toBeUndefined();
  expect(both.reasons["sessions tooth"]).toContain("fdi and in universal");
  expect(missingFields(both.mapping)).toContainEqual({
    ...{ table: "sessions", field: "tooth_notation" },
  });
  const said = await proposed(chart("Tooth (FDI)", ["14", "15"]));
  expect(said.fields("sessions").tooth_notation).toEqual({ always: "fdi" });
  const alone = await proposed(chart("Tooth", ["14", "46"]));
  expect(alone.fields("sessions").tooth_notation).toEqual({ always: "fdi" });
});

test("a moment that stays with the visit is not the delivery's; one that changes is", async () => {
  const row = (time: string) => `V-1;MB;water;syringe;2.5;2026-07-01 ${time}`;
  const head = "Visit;Canal;Agent;Mode;Amount (ml);Start";
  const same = await proposed([head, row("09:00"), row("09:00"), row("09:00"), row("09:00")]);
  expect(same.fields("irrigation").started_at).toBeUndefined();
  const own = await proposed([head, row("09:00"), row("09:02"), row("09:04"), row("09:06")]);
  expect(own.fields("irrigation").started_at).toMatchObject({ columns: ["Start"] });
});

test("without a visit's number rows find theirs by time and chair, and are numbered", async () => {
  const { mapping, fields } = await proposed([
    "Chair;Day;Time;Canal;Agent;Mode;Tooth no",
    "N-2;01.07.2026;09:10;MB;bleach 3,0 %;syringe;26",
    "N-2;13.07.2026;09:12;MB;water;syringe;46",
  ]);
  const clock = { day: "day-month-year", hours: 24 };
  expect(mapping.tables.map(({ table }) => table)).toEqual(["irrigation"]);
  expect(mapping.tables[0]?.minutes).toBe(10);
  expect(fields("irrigation")).toMatchObject({
    "visit.at": { columns: ["Day", "Time"], clock },
    "visit.chair": { columns: ["Chair"] },
    "visit.tooth": { columns: ["Tooth no"] },
    "visit.tooth_notation": { always: "fdi" },
    seq: { numbered: true },
  });
  expect(missingFields(mapping)).toEqual([]);
});

test("a word is proposed only where one meaning is likely", async () => {
  const agents = [
    ...["Natriumhypochlorit 5,25%", "Wasser", "Wasserstoffperoxid", "NaOCl + EDTA", "xyz"],
    ...["Kochsalzlösung", "Zitronensäure 10 %"],
  ];
  const { fields, reasons } = await proposed([
    "Sitzung;Kanal;Mittel Lösung;Abgabe",
    ...agents.map((agent) => `V-1;MB;${agent};Spritze`),
  ]);
  const irrigant = fields("irrigation").irrigant as { words: { word: string; means: string }[] };
  const also = { concentration_pct: "{number}" };
  expect(irrigant.words).toEqual([
    { word: "Natriumhypochlorit {number}%", means: "naocl", also },
    { word: "Wasser", means: "water" },
    { word: "Wasserstoffperoxid", means: "other" },
    { word: "Kochsalzlösung", means: "saline" },
    { word: "Zitronensäure {number} %", means: "citric-acid", also },
  ]);
  expect(reasons["irrigation irrigant"]).toContain('Say what "NaOCl + EDTA", "xyz" mean.');
});

test("units are taken from the cells, the times' shape or the column's name", async () => {
  const { fields } = await proposed([
    "Visit;Canal;Agent;Mode;Volume;Flow ml/s;Duration;Dwell time (min)",
    "V-1;MB;water;syringe;4.5 cc;0.1;PT45S;1.5",
    "V-1;ML;water;syringe;2 cc;0.075;PT1M;2",
  ]);
  expect(fields("irrigation")).toMatchObject({
    volume_ml: { unit: "cm3", words: [{ word: "{number} cc", means: "{number}" }] },
    flow_ml_min: { unit: "mL/s" },
    duration_s: { unit: "ISO 8601" },
    dwell_s: { unit: "min" },
  });
  expect(unitOfName("debit_ml_s")).toBe("mL/s");
  expect(unitOfName("Menge (µl)")).toBe("uL");
  expect(unitOfName("Comment")).toBeUndefined();
  expect(unitNamed("N·cm")).toBe("N.cm");
  expect(unitNamed("constructor")).toBeUndefined();
});

test("contents decide over a name: a column of words is no amount", async () => {
  const { fields } = await proposed([
    "Visit;Canal;Agent;Mode;Volume",
    "V-1;MB;water;syringe;much",
    "V-1;ML;water;syringe;little",
  ]);
  expect(fields("irrigation").volume_ml).toBeUndefined();
});

test("canals by other names are understood", async () => {
  const { fields } = await proposed([
    "Séance;Canal;Produit;Mode",
    "V-1;MV1;javel;seringue",
    "V-1;palatin;javel;seringue",
    "V-1;DB;javel;seringue",
  ]);
  expect(fields("irrigation").canal).toEqual({
    columns: ["Canal"],
    words: [
      { word: "MV1", means: "MB1" },
      { word: "palatin", means: "P" },
    ],
  });
});

/** A chart of two visits, with a column of these cells. */
function chart(name: string, cells: readonly [string, string]): string[] {
  return [
    `Visit;Site;Chair;Operator;Patient;${name}`,
    ...cells.map((cell, place) => `V-${place};A;A-1;C0${place};p-${place};${cell}`),
  ];
}

async function proposed(lines: readonly string[]) {
  const folder = await mkdtemp(join(tmpdir(), "canal-audit-propose-"));
  try {
    const path = join(folder, "file.csv");
    await writeFile(path, `${lines.join("\n")}\n`);
    const { mapping, reasons } = propose(await recognise(path, "file.csv"), "file.csv");
    const fields = (table: string): Readonly<Record<string, unknown>> =>
      mapping.tables.find((one) => one.table === table)?.fields ?? {};
    return { mapping, reasons, fields };
  } finally {
    await rm(folder, { recursive: true });
  }
}
