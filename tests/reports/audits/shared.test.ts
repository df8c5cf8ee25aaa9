import { afterAll, beforeAll, expect, test } from "vitest";
import { answerToDispute } from "@/lib/reports/audits/look-acts";
import { confirmingPage } from "@/lib/reports/audits/pages";
import { closeWindow, openWindow, sign } from "@/lib/reports/audits/scope-acts";
import { sharedAuditPage, sharedAuditsPage } from "@/lib/reports/audits/shared";
import {
  answerAudit,
  confirmOwn,
  disputeOwn,
  reflect,
  withdrawOwn,
} from "@/lib/reports/audits/shared-acts";
import { disconnect } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../../fresh-database";
import { bringIn } from "../../store/bring-in";
import { begun, lead, madeReady, one, rows, tomorrow, two } from "./audit-home";

// Expected values are the project's own rules of who sees and says what in an audit, and counts by hand from the rows brought in.

let database: ScratchDatabase;
let audit = "";
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await bringIn(rows());
  audit = await begun(lead);
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

test("an audit is shared when its window opens, with those alone who have records in it", async () => {
  expect((await sharedAuditsPage(one)).audits).toEqual([]);
  expect(await sharedAuditPage(one, audit)).toBeNull();
  await openWindow(lead, { audit, until: tomorrow });
  expect((await sharedAuditsPage(one)).audits.map(({ asked }) => asked)).toEqual([true]);
  const nobody = { ...one, grants: [{ ...one.grants[0], clinicianKey: "OAK/C09" }] } as typeof one;
  expect((await sharedAuditsPage(nobody)).audits).toEqual([]);
  const view = await sharedAuditPage(one, audit);
  expect(view?.visits).toHaveLength(12);
  expect((await sharedAuditPage(two, audit))?.visits).toHaveLength(3);
});

test("a dispute is of one's own visit, stands beside the figures, and holds the signing until it is answered", async () => {
  const dispute = { audit, kind: "not-mine", note: "A colleague's." };
  expect((await disputeOwn(one, { ...dispute, visit: "OAK/V-13" })).wrong).toHaveProperty("visit");
  expect((await disputeOwn(one, { ...dispute, visit: "OAK/V-3" })).done).toBeDefined();
  const page = await confirmingPage(lead, audit);
  const [shown] = page?.view.disputes ?? [];
  expect(shown?.words).toBe("Not mine: A colleague's.");
  expect(page?.head.steps.find(({ path }) => path === "confirming")?.left).toMatch(/1 to answer/);
  // Another's dispute is not one's own to take back.
  const id = String(shown?.id);
  expect((await withdrawOwn(two, { audit, dispute: id })).wrong).toBeDefined();
  await answerToDispute(lead, { audit, dispute: id, answer: "Moved to the right code." });
  expect((await sharedAuditPage(one, audit))?.disputes[0]?.answer).toMatch(/Moved/);
});

test("the lead sees who confirmed, read and answered, and nothing of what somebody noted for themselves", async () => {
  await confirmOwn(one, { audit, confirmed: "yes" });
  await answerAudit(one, { audit, text: "Agreed." });
  await reflect(one, { audit, text: "A thought of my own." });
  const page = await confirmingPage(lead, audit);
  const [own, other] = page?.view.clinicians ?? [];
  expect([own?.confirmed, own?.read, own?.answer]).toEqual([
    expect.stringMatching(/^yes/),
    expect.stringMatching(/^yes/),
    "Agreed.",
  ]);
  expect(other?.confirmed).toBe("not yet");
  expect(JSON.stringify(page)).not.toContain("A thought of my own.");
  expect((await sharedAuditPage(two, audit))?.reflection.text).toBe("");
  expect((await sharedAuditPage(one, audit))?.reflection.text).toBe("A thought of my own.");
});

test("after the window nothing is confirmed, and what is signed shows each their own figures alone", async () => {
  await closeWindow(lead, { audit });
  expect((await confirmOwn(two, { audit, confirmed: "yes" })).wrong).toBeDefined();
  await madeReady(lead, audit);
  expect((await sign(lead, { audit, sure: "yes" })).done).toBeDefined();
  const view = await sharedAuditPage(one, audit);
  expect(view?.state).toMatch(/Signed as version 1/);
  const volume = view?.figures.find(({ measure }) => measure === "volume");
  expect(volume?.finding).toMatch(/12 recorded canals/);
  expect(JSON.stringify(view)).not.toContain("C02");
});
