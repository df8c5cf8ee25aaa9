import { createHash } from "node:crypto";
import { parse } from "csv-parse/sync";
import { readSheet } from "read-excel-file/node";
import { afterAll, beforeAll, expect, test } from "vitest";
import { qualityReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { exportAdherence } from "@/lib/reports/adherence-export";
import { AskedWrongly } from "@/lib/reports/asked-period";
import { qualityExport } from "@/lib/reports/quality-report";
import { readPeriod } from "@/lib/reports/read-period";
import { disconnect } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { exportsBefore } from "@/lib/store/quality/exports";
import { freshDatabase } from "../fresh-database";
import { bringIn, canal, visit } from "../store/bring-in";

// The files are compared with each other, the workbook as a general-purpose reader has it; counts are worked by hand from one record.
let database: ScratchDatabase;
const period = readPeriod("2026-Q3");
if (!period) throw new Error("no such quarter");
const of = period;
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
    sessions: [{ ...visit, ended_at: undefined }],
    canals: [canal],
    steps: [{ session_id: visit.session_id ?? "", canal: "", step: "dam", status: "done" }],
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
  expect(isolation?.[header.indexOf("met")]).toBe(1);
  expect(isolation?.[header.indexOf("counted")]).toBe(1);
  expect(rows).toHaveLength(figures.length);
  for (const [place, row] of rows.entries())
    for (const [column, name] of header.entries())
      expect(String(row[column] ?? ""), `${name} of ${place}`).toBe(figures[place]?.[String(name)]);
});

test("the same records give the same fingerprint, others another", async () => {
  const reach = qualityReach(officer);
  const before = await exportAdherence(reach, of, "json");
  expect((await exportAdherence(reach, of, "json")).sha256).toBe(before.sha256);
  await bringIn({ sessions: [{ ...visit, session_id: "V-2", ended_at: undefined }] });
  expect((await exportAdherence(reach, of, "json")).fingerprint).not.toBe(before.fingerprint);
});

test("a format that there is none of is refused in words", async () => {
  await expect(qualityExport(officer, { period: "2026-Q3", format: "docx" })).rejects.toThrow(
    AskedWrongly,
  );
});
