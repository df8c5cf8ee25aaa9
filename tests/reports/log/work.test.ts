import { mkdir, utimes, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { holderReach, leadReach } from "@/lib/access/reach";
import { watchFolder } from "@/lib/command/watch-folder";
import { prepareDue } from "@/lib/reports/audits/prepare-due";
import { schedule } from "@/lib/reports/audits/schedules";
import { retentionRun } from "@/lib/reports/retention/retention";
import { setRetentions } from "@/lib/reports/retention/set-retention";
import { startImport } from "@/lib/reports/start-import";
import { pool } from "@/lib/store/database";
import { linesWithin } from "@/lib/store/log/read-lines";
import { lineView } from "@/lib/views/log/log-words";
import { bringIn } from "../../store/bring-in";
import { lead, rows } from "../audits/audit-home";
import { eachInUploadHome, sentForm } from "../upload-home";

// Expected values are the project's own rule: what goes on with nobody waiting for it leaves a line when it is done, of whose doing it is,
// with numbers and codes alone.

const home = eachInUploadHome();
const reach = holderReach();
const head =
  "session_id,practice,chair,clinician,patient,started_at,tooth,tooth_notation,treatment,outcome";
const row = "V-1,OAK,OAK-1,C01,reference-1,2026-07-03T09:10,26,fdi,primary,completed";

test("an import that goes on after its upload, however it ends", async () => {
  const begun = await startImport(
    reach.records,
    ...sentForm({ "sessions.csv": `${head}\n${row}\n` }),
  );
  expect(await lineOf("import ended")).toEqual([
    "changed",
    "command line",
    `import=${begun.importId} outcome=done`,
  ]);
});

test("what a schedule asks for, prepared by whoever opens a page", async () => {
  await bringIn(rows());
  await schedule(lead, { practice: "OAK" }, "audit");
  await pool().query("update schedules set at = '2026-08-01'");
  await prepareDue(leadReach(lead), "audit", "2026-10-02");
  await prepareDue(leadReach(lead), "audit", "2026-10-02");
  expect(await lineOf("prepared")).toEqual([
    "changed",
    "by itself",
    "schedule=1 practice=OAK period=2026-Q3 audit=1",
  ]);
});

test("what is deleted by age, and nothing where nothing is", async () => {
  await bringIn(rows());
  await setRetentions(reach.people, ["records=1", "notes=1"]);
  const { url } = { url: process.env.DATABASE_URL ?? "" };
  const went = await retentionRun(reach, { url, keeperUrl: null }, "2030-06-15");
  const visits = went.find(({ what }) => what === "records")?.older ?? 0;
  expect(visits).toBeGreaterThan(0);
  expect(await lineOf("deleted")).toEqual([
    "changed",
    "by itself",
    `what=records from=2030-05-15 rows=${visits}`,
  ]);
});

test("each file that a watched folder brings in", async () => {
  const folder = join(home(), "watched");
  await mkdir(folder);
  await writeFile(join(folder, "sessions.csv"), `${head}\n${row}\n`);
  const past = new Date(Date.now() - 60_000);
  await utimes(join(folder, "sessions.csv"), past, past);
  await watchFolder([folder, "--once", "--every", "1", "--zone", "Europe/London"], true);
  expect(await lineOf("canal-audit watch")).toEqual(["changed", "command line", "import=1"]);
});

/** The one line of this thing: kind, whose, what it was about. */
async function lineOf(what: string) {
  for (let tries = 0; tries < 100; tries += 1) {
    const lines = await linesWithin(reach.people, { limit: 100 });
    const [line, more] = lines.filter((one) => one.what === what);
    if (!line) {
      await new Promise((resolve) => setTimeout(resolve, 50));
      continue;
    }
    expect(more).toBeUndefined();
    expect(lineView(line, "UTC").what).not.toBe(what);
    return [line.kind, line.person, line.about];
  }
  throw new Error(`no line of ${what}`);
}
