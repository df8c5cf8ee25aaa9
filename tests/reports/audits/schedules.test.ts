import { afterAll, beforeAll, expect, test } from "vitest";
import { leadReach, qualityReach } from "@/lib/access/reach";
import { auditsPage } from "@/lib/reports/audits/list";
import { prepareDue } from "@/lib/reports/audits/prepare-due";
import { endSchedule, preparedReport, schedule, schedulesOf } from "@/lib/reports/audits/schedules";
import { sha256 } from "@/lib/reports/fingerprint";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../../fresh-database";
import { bringIn } from "../../store/bring-in";
import { viewerAs } from "../../store/comparing/viewers";
import { lead, rows } from "./audit-home";

// Expected values are the project's own rules: once a quarter, never for a quarter that was over before.

const officer = viewerAs("quality-officer");
let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await bringIn(rows());
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

test("an audit is begun once when a quarter ends, however many ask at the same time", async () => {
  const reach = leadReach(lead);
  expect((await schedule(lead, { practice: "OAK" }, "audit")).done).toBeDefined();
  expect(await prepareDue(reach, "audit", "2026-10-02")).toEqual([]);
  await pool().query("update schedules set at = '2026-08-01'");
  const made = await Promise.all([1, 2, 3].map(() => prepareDue(reach, "audit", "2026-10-02")));
  expect(made.flat()).toHaveLength(1);
  expect(await prepareDue(reach, "audit", "2026-12-31")).toEqual([]);
  const { audits } = await auditsPage(lead);
  expect(audits.map(({ name }) => name)).toEqual(["Audit of practice OAK, July to September 2026"]);
  expect((await schedulesOf(lead, "audit")).prepared).toHaveLength(1);
});

test("a report is made, kept and handed out by its SHA-256, to whom it concerns", async () => {
  await schedule(officer, { practice: "", format: "csv" }, "report");
  await pool().query("update schedules set at = '2026-08-01' where what = 'report'");
  await prepareDue(qualityReach(officer), "report", "2026-10-02");
  const [one] = (await schedulesOf(officer, "report")).prepared;
  const id = one?.href.split("/")[4] ?? "";
  const file = await preparedReport(officer, id, "2026-Q3");
  expect(file?.name).toBe("adherence-2026-Q3.csv");
  expect(sha256(file?.bytes ?? "")).toBe(one?.sha256);
  const elsewhere = viewerAs("quality-officer", "ELM");
  expect(await preparedReport(elsewhere, id, "2026-Q3")).toBeNull();
  expect(await preparedReport(officer, id, "2026-Q1")).toBeNull();
});

test("a schedule that was ended prepares no more", async () => {
  const { schedules } = await schedulesOf(officer, "report");
  expect(
    (await endSchedule(officer, { schedule: String(schedules[0]?.id) }, "report")).done,
  ).toBeDefined();
  expect(await prepareDue(qualityReach(officer), "report", "2027-01-02")).toEqual([]);
});
