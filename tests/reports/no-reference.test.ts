import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readSheet } from "read-excel-file/node";
import { expect, test } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { exportAdherence } from "@/lib/reports/adherence-export";
import { beginNewAudit } from "@/lib/reports/audits/begin";
import { auditReportFile } from "@/lib/reports/audits/report-file";
import { exportRecords } from "@/lib/reports/export-records";
import { mendOne } from "@/lib/reports/mend-one";
import { readPeriod } from "@/lib/reports/read-period";
import { startImport } from "@/lib/reports/start-import";
import { unitsExport } from "@/lib/reports/units";
import { upkeepExport } from "@/lib/reports/upkeep-page";
import { bringWaitingIn } from "@/lib/reports/waiting-change";
import { keepDraft, testDraft, testSoFar } from "@/lib/reports/waiting-draft";
import { waitingFilePage } from "@/lib/reports/waiting-file-page";
import { pool } from "@/lib/store/database";
import { exportFormats } from "@/lib/views/export-format";
import { viewerAs } from "../store/comparing/viewers";
import { readPdf } from "./pdf/read-pdf";
import { eachInUploadHome, endedImport, sentForm } from "./upload-home";

// Expected values are the project's own promise: no patient's reference stands anywhere in the database or in what leaves the house. The
// references are those of the files, as a plain reading finds them.

eachInUploadHome();

const { records, figures } = holderReach();
const keeper = viewerAs("record-keeper");
const data = join(import.meta.dirname, "../data/foreign");
const head =
  "session_id,practice,chair,clinician,patient,case_id,started_at,ended_at,tooth,tooth_notation,treatment,outcome\n";
const times = "2026-07-03T08:10:00Z,2026-07-03T09:00:00Z";
const ours = ["ZQ-Smith-001", "ZQ-Jones-002", "ZQ-Brown-003", "ZQ-Green-004", "ZQ-White-005"];
const sessions =
  head +
  [
    `v1,OAK,1,C01,${ours[0]},Endo ${ours[0]},${times},26,fdi,primary,completed`,
    `v2,OAK,1,C01, ${ours[1]} ,,${times},26,fdi,primary,completed`,
    // Held by the checks, with the reference in a cell that is none of a patient's too.
    `v3,OAK,1,C01,${ours[2]},,${times},99 ${ours[2]},fdi,primary,completed`,
    // Held as a contradiction, and one to be mended.
    `v1,OAK,1,C01,${ours[3]},,${times},26,fdi,primary,completed`,
    `v5,OAK,1,C01,${ours[0]},,${times},97,fdi,primary,completed`,
  ].join("\n");

test("no patient's reference is in the database or in any file that leaves", async () => {
  const chart = await readFile(join(data, "chart-export.csv"));
  const theirs = [...new Set(chart.toString("utf16le").match(/\bpt-[0-9a-f]{10}\b/g))];
  expect(theirs.length).toBeGreaterThan(20);
  const all = [...ours, ...theirs];
  const foundIn = (text: string) => all.filter((one) => text.includes(one));
  expect(foundIn(sessions)).toEqual(ours.slice(0, 4));

  // A file of another system waits, is mapped and brought in; at each step the whole database is searched.
  const { waiting } = await startImport(records, ...sentForm({ "chart-export.csv": chart }));
  const [id = 0] = waiting;
  await looked(id);
  await nothingIn(foundIn);
  const right = JSON.parse(await readFile(join(data, "chart-export.mapping.json"), "utf8"));
  await keepDraft(records, id, right);
  await nothingIn(foundIn);
  await tested(id, right);
  await nothingIn(foundIn);
  const brought = await bringWaitingIn(records, [id]);
  if ("wrong" in brought) throw new Error(brought.wrong.form);
  expect(await endedImport(brought.importId)).toMatchObject({ state: "done" });
  const begun = await startImport(records, ...sentForm({ "sessions.csv": sessions }));
  expect(await endedImport(begun.importId)).toMatchObject({ state: "done" });
  const held = await pool().query<{ id: string }>(
    "select id::text from held where key like '%v5%'",
  );
  const mended = await mendOne(records, held.rows[0]?.id ?? "", {
    ...{ "cell-tooth": "26", "cell-patient": ours[4] ?? "", "cell-practice": "OAK" },
    reason: `It is ${ours[4]} of the other list`,
  });
  expect(mended).toHaveProperty("done");
  const counts = await pool().query("select count(*)::int as held from held where state = 'held'");
  expect(counts.rows[0].held).toBeGreaterThanOrEqual(2);
  await nothingIn(foundIn);

  const period = readPeriod("2026-Q3");
  if (!period) throw new Error("no such quarter");
  const texts: Record<string, string> = {};
  for (const format of Object.keys(exportFormats) as (keyof typeof exportFormats)[]) {
    const { bytes } = await exportAdherence(figures, period, format);
    texts[format] =
      format === "xlsx"
        ? JSON.stringify(await readSheet(Buffer.from(bytes)))
        : Buffer.from(bytes).toString();
  }
  const lead = viewerAs("clinical-lead");
  texts.units = (await unitsExport(lead, "volume", { period: "2026-Q3" })).text;
  texts.upkeep = (await upkeepExport(lead, { period: "2026-Q3" })).text;
  const audit = await beginNewAudit(lead, { practice: "", period: "2026-Q3" });
  if ("wrong" in audit) throw new Error(JSON.stringify(audit.wrong));
  const pdf = await auditReportFile(lead, String(audit.audit), {});
  texts.pdf = pdf ? JSON.stringify((await readPdf(pdf.bytes)).pages) : "";
  const out = await mkdtemp(join(tmpdir(), "canal-audit-out-"));
  await exportRecords(records, out);
  for (const name of await readdir(out, { recursive: true }))
    texts[name] = await readFile(join(out, name), "utf8").catch(() => "");
  await rm(out, { recursive: true });
  expect(Object.keys(texts).length).toBeGreaterThan(12);
  for (const [name, text] of Object.entries(texts)) expect(foundIn(text), name).toEqual([]);
  expect(texts.pdf?.length).toBeGreaterThan(500);
  await nothingIn(foundIn);
});

async function looked(id: number): Promise<void> {
  for (let tries = 0; tries < 200; tries += 1) {
    if ((await waitingFilePage(keeper, id))?.state === "open") return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error("the file was not looked through");
}

async function tested(id: number, mapping: unknown): Promise<void> {
  await testDraft(records, id, mapping);
  for (let tries = 0; tries < 200; tries += 1) {
    if ((await testSoFar(records, id))?.state !== "running") return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

/** Searches every row of every table. */
async function nothingIn(foundIn: (text: string) => string[]): Promise<void> {
  const { rows } = await pool().query<{ name: string }>(
    "select table_name as name from information_schema.tables where table_schema = 'public'",
  );
  expect(rows.length).toBeGreaterThan(40);
  for (const { name } of rows) {
    const all = await pool().query<{ text: string }>(
      `select to_jsonb(t)::text as text from "${name}" t`,
    );
    expect(foundIn(all.rows.map(({ text }) => text).join("\n")), name).toEqual([]);
  }
}
