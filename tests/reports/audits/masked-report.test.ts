import { afterAll, beforeAll, expect, test } from "vitest";
import { resultsPage } from "@/lib/reports/audits/pages";
import { auditReport } from "@/lib/reports/audits/report";
import { disconnect } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../../fresh-database";
import { bringIn, canal, delivery, visit } from "../../store/bring-in";
import { begun, lead } from "./audit-home";

// Expected values are the project's own rule: what rests on fewer than five patients does not leave (common practice).

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await bringIn({ sessions: [visit], canals: [canal], irrigation: [delivery] });
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

test("the report of an audit that rests on one patient tells nothing of it; its pages do to those who run it", async () => {
  const id = await begun(lead);
  const report = await auditReport(lead, id, {});
  const words = JSON.stringify(report?.document);
  expect(words).toContain("is not reported: masked: fewer than 5 patients");
  expect(words).not.toMatch(/of 1 (canal|visit)/);
  expect(report?.document.parts.map((part) => part.id)).not.toContain("results");
  expect(JSON.stringify((await resultsPage(lead, id))?.view.matrix)).toMatch(/of 1/);
});
