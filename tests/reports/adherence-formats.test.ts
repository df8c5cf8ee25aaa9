import { createHash } from "node:crypto";
import { parse } from "csv-parse/sync";
import { readSheet } from "read-excel-file/node";
import { afterAll, beforeAll, expect, test } from "vitest";
import { qualityReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { exportAdherence } from "@/lib/reports/adherence-export";
import { AskedWrongly } from "@/lib/reports/asked-period";
import { qualityExport, qualityReport } from "@/lib/reports/quality-report";
import { readPeriod } from "@/lib/reports/read-period";
import { disconnect } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { exportsBefore } from "@/lib/store/quality/exports";
import { freshDatabase } from "../fresh-database";
import { bringIn, canal, visit } from "../store/bring-in";

// The files are compared with each other, the workbook as a general-purpose reader has it; counts are worked by hand from five records alike.
let database: ScratchDatabase;
const period = readPeriod("2026-Q3");
if (!period) throw new Error("no such quarter");
const of = period;
/** Five visits of five patients, so that their lines may leave; a sixth comes later. */
const ids = ["V-1", "V-2", "V-3", "V-4", "V-5"];
const officer: Viewer = {
  userId: "u",
  name: "Quality person",
  email: "q@group.example",
  grants: [{ role: "quality-officer", practice: null, clinicianKey: null }],
};

beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await bringIn({
    sessions: ids.map((session_id) => ({
      ...visit,
      ...{ session_id, patient: `hash-${session_id}`, ended_at: undefined },
    })),
    canals: ids.map((session_id) => ({ ...canal, session_id })),
    steps: ids.map((session_id) => ({ session_id, canal: "", step: "dam", status: "done" })),
  });
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

test("CSV, XLSX and JSON are one report with one fingerprint, which is the SHA-256 of the JSON; all are kept", async () => {
  const reach = qualityReach(officer);
  const [csv, xlsx, json] = [
    await exportAdherence(reach, of, "csv"),
    await exportAdherence(reach, of, "xlsx"),
    await exportAdherence(reach, of, "json"),
  ];
  expect(new Set([csv.fingerprint, xlsx.fingerprint, json.fingerprint]).size).toBe(1);
  expect(createHash("sha256").update(json.bytes).digest("hex")).toBe(csv.fingerprint);
  expect([csv.name, xlsx.name, json.name]).toEqual([
    "adherence-2026-Q3.csv",
    "adherence-2026-Q3.xlsx",
    "adherence-2026-Q3.json",
  ]);
  const kept = await exportsBefore(reach, 3);
  expect(kept.map(({ format, fingerprint }) => [format, fingerprint])).toEqual(
    ["json", "xlsx", "csv"].map((format) => [format, csv.fingerprint]),
  );

  const records: Record<string, string>[] = parse(Buffer.from(csv.bytes), {
    bom: true,
    columns: true,
  });
  const says = records.find((row) => row.title?.startsWith("fingerprint"))?.says;
  expect(says).toBe(csv.fingerprint);

  const figures = records.filter((row) => row.row === "figure");
  const [header = [], ...rows] = await readSheet(Buffer.from(xlsx.bytes), "Figures");
  const isolation = rows.find((row) => row[header.indexOf("criterion")] === "isolation");
  expect(isolation?.[header.indexOf("met")]).toBe(5);
  expect(isolation?.[header.indexOf("counted")]).toBe(5);
  expect(rows).toHaveLength(figures.length);
  for (const [place, row] of rows.entries())
    for (const [column, name] of header.entries())
      expect(String(row[column] ?? ""), `${name} of ${place}`).toBe(figures[place]?.[String(name)]);
});

test("the same records give the same fingerprint, others another", async () => {
  const reach = qualityReach(officer);
  const before = await exportAdherence(reach, of, "json");
  expect((await exportAdherence(reach, of, "json")).sha256).toBe(before.sha256);
  await bringIn({ sessions: [{ ...visit, session_id: "V-6", ended_at: undefined }] });
  expect((await exportAdherence(reach, of, "json")).fingerprint).not.toBe(before.fingerprint);
});

test("a format that there is none of is refused in words", async () => {
  await expect(qualityExport(officer, { period: "2026-Q3", format: "docx" })).rejects.toThrow(
    AskedWrongly,
  );
});

test("days that are no month, quarter or year do not leave, and the page shows them", async () => {
  const days = { period: "2026-07-01..2026-07-20" };
  await expect(qualityExport(officer, days)).rejects.toThrow(/A file is made of a month/);
  expect((await qualityReport(officer, days)).report.criteria.length).toBeGreaterThan(0);
});

test("one practice of few patients: it, and the whole that would give it away, are masked in every format", async () => {
  const elm = { ...visit, ...{ session_id: "E-1", practice: "ELM", chair: "ELM-1" } };
  await bringIn({ sessions: [{ ...elm, patient: "hash-elm", ended_at: undefined }] });
  const reach = qualityReach(officer);
  for (const name of ["2026-07", "2026-Q3", "2026"]) {
    const asked = readPeriod(name) ?? of;
    const { report } = await exportAdherence(reach, asked, "json");
    const isolation = report.criteria.find(({ criterion }) => criterion.id === "isolation");
    expect(isolation?.lines.map(({ about, masked = false }) => [about, masked])).toEqual([
      ["all practices", true],
      ["practice ELM", true],
      ["practice OAK", false],
    ]);
    expect(report.people.map(({ practice, patients }) => [practice, patients])).toEqual([
      ["ELM", null],
      ["OAK", 6],
    ]);
    const csv = await exportAdherence(reach, asked, "csv");
    const rows: Record<string, string>[] = parse(Buffer.from(csv.bytes), {
      bom: true,
      columns: true,
    });
    const told = rows
      .filter((row) => row.row === "figure")
      .map((row) => [row.population, row.says]);
    const xlsx = await exportAdherence(reach, asked, "xlsx");
    const [header = [], ...sheet] = await readSheet(Buffer.from(xlsx.bytes), "Figures");
    const at = (column: string) => header.indexOf(column);
    expect(
      sheet.map((row) => [String(row[at("population")]), String(row[at("says")] ?? "")]),
    ).toEqual(told);
    expect(told.filter(([population]) => population === "masked").length).toBeGreaterThan(2);
  }
});
