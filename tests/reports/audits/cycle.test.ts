import { createHash } from "node:crypto";
import { afterAll, beforeAll, expect, test } from "vitest";
import { leadReach } from "@/lib/access/reach";
import { agree } from "@/lib/reports/audits/action-acts";
import { auditAt, contentOf } from "@/lib/reports/audits/audit-at";
import { beginNewAudit, reAudit } from "@/lib/reports/audits/begin";
import { auditsPage } from "@/lib/reports/audits/list";
import { resultsPage, scopePage } from "@/lib/reports/audits/pages";
import { auditReport } from "@/lib/reports/audits/report";
import { leaveAsSigned, openWindow, restate, sign } from "@/lib/reports/audits/scope-acts";
import { verifyVersion } from "@/lib/reports/audits/verify";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { canonicalJson } from "@/lib/views/canonical-json";
import { freshDatabase } from "../../fresh-database";
import { bringIn, canal, delivery, visit } from "../../store/bring-in";
import { begun, lead, leadOfElm, madeReady, rows, tomorrow, write } from "./audit-home";

// Expected values are the project's own rules of an audit, counts by hand from the rows brought in, and SHA-256 as Node computes it.

let database: ScratchDatabase;
let id = "";
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await bringIn(rows());
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const yes = async () => sign(lead, { audit: id, sure: "yes" });

test("an audit says what it lacks, step by step, and is not signed before", async () => {
  id = await begun(lead);
  expect(await beginNewAudit(lead, { practice: "OAK", period: "2026-Q3" })).toHaveProperty("wrong");
  const audit = await auditAt(lead, id);
  const lacking = new Set(audit?.missing.map(({ what }) => what));
  expect([...lacking]).toEqual(expect.arrayContaining(["text", "note", "window", "action"]));
  expect((await yes()).wrong?.form).toMatch(/missing/);
  expect(await auditAt(leadOfElm, id)).toBeNull();
});

test("signed, its bytes are canonical JSON under their SHA-256, and the same records give the same bytes", async () => {
  await madeReady(lead, id);
  expect((await sign(lead, { audit: id })).wrong).toHaveProperty("sure");
  expect((await yes()).done).toMatch(/version 1/);
  const audit = await auditAt(lead, id);
  const [version] = audit?.versions ?? [];
  if (!audit || !version) throw new Error("not signed");
  expect(createHash("sha256").update(version.content).digest("hex")).toBe(version.sha256);
  expect(canonicalJson(JSON.parse(version.content))).toBe(version.content);
  const verified = await verifyVersion(leadReach(lead), audit.row, version);
  expect([verified.broken, verified.changes]).toEqual([null, null]);
  expect(verified.computedNow).toBe(version.computedSha256);
  const { records } = contentOf(version).computed;
  expect([records.counts.sessions, records.counts.canals]).toEqual([15, 15]);
});

test("the database keeps a signed version as it is, whoever asks", async () => {
  for (const sql of [
    "update signed_audits set content = '{}'",
    "delete from signed_audits",
    "truncate signed_audits",
  ])
    await expect(pool().query(sql)).rejects.toThrow(/kept as it was signed/);
});

test("what is signed is closed to writing", async () => {
  expect(await write(lead, id, "summary", "Something else.", 1)).toHaveProperty("wrong");
  expect(await openWindow(lead, { audit: id, until: tomorrow })).toHaveProperty("wrong");
});

test("a later record is shown as a change, and leads by choice to a restated version that leaves the first as it was", async () => {
  await bringIn({
    sessions: [
      {
        ...visit,
        session_id: "V-late",
        patient: "p-late",
        started_at: "2026-09-03T08:10:00.000Z",
        ended_at: undefined,
      },
    ],
    canals: [{ ...canal, session_id: "V-late" }],
    irrigation: [{ ...delivery, session_id: "V-late", volume_ml: 9 }],
  });
  const audit = await auditAt(lead, id);
  const [first] = audit?.versions ?? [];
  if (!audit || !first) throw new Error("not signed");
  // What the pages show is what was signed.
  expect(audit.content.computed.records.counts.sessions).toBe(15);
  const { changes } = await verifyVersion(leadReach(lead), audit.row, first);
  expect(changes?.visits).toEqual({ added: ["OAK/V-late"], changed: [], gone: [] });
  expect(changes?.figures.length).toBeGreaterThan(0);

  expect((await restate(lead, { audit: id, reason: "" })).wrong).toHaveProperty("reason");
  await restate(lead, { audit: id, reason: "A visit came in late." });
  expect((await leaveAsSigned(lead, { audit: id })).done).toBeDefined();
  await restate(lead, { audit: id, reason: "A visit came in late." });
  await madeReady(lead, id);
  expect((await yes()).done).toMatch(/version 2/);
  const after = await auditAt(lead, id);
  expect(after?.versions.map(({ version, reason }) => [version, reason])).toEqual([
    [1, null],
    [2, "A visit came in late."],
  ]);
  expect(after?.versions[0]?.content).toBe(first.content);
  expect(after?.content.computed.records.counts.sessions).toBe(16);
});

test("a mended record is named as changed", async () => {
  const audit = await auditAt(lead, id);
  const latest = audit?.versions.at(-1);
  if (!audit || !latest) throw new Error("not signed");
  await pool().query(
    "update irrigation set volume_ml = 1 where visit_id = (select id from sessions where session_id = 'V-3')",
  );
  await pool().query(
    "update settings set value = (value::bigint + 1)::text where key = 'revision of the records'",
  );
  const { changes } = await verifyVersion(leadReach(lead), audit.row, latest);
  expect(changes?.visits.changed).toEqual(["OAK/V-3"]);
});

test("a held row about a visit is among what changed of it, as it leaves the visit's totals open", async () => {
  const audit = await auditAt(lead, id);
  const latest = audit?.versions.at(-1);
  if (!audit || !latest) throw new Error("not signed");
  await bringIn({ irrigation: [{ ...delivery, session_id: "V-5", volume_ml: 7 }] });
  const { changes } = await verifyVersion(leadReach(lead), audit.row, latest);
  expect(changes?.visits.changed).toEqual(["OAK/V-3", "OAK/V-5"]);
});

test("an altered version is told as broken", async () => {
  const audit = await auditAt(lead, id);
  const latest = audit?.versions.at(-1);
  if (!audit || !latest) throw new Error("not signed");
  const altered = { ...latest, content: latest.content.replace("It is so.", "It is not so.") };
  const verified = await verifyVersion(leadReach(lead), audit.row, altered);
  expect(verified.broken).toMatch(/SHA-256/);
});

test("the report names no clinician unless asked, and the redrawn codes are the same each time", async () => {
  const words = async (clinicians: string) => {
    const report = await auditReport(lead, id, { clinicians });
    // Ids are never printed.
    return JSON.stringify(report?.document, (key, value) => (key === "id" ? undefined : value));
  };
  expect(await words("none")).not.toMatch(/C01|C02|Clinician A/);
  const redrawn = await words("redrawn");
  expect(redrawn).not.toMatch(/C01|C02/);
  expect(redrawn).toMatch(/Clinician A/);
  expect(await words("redrawn")).toBe(redrawn);
  expect(await words("codes")).toMatch(/C01/);
});

test("a re-audit opens with last time's actions, and shows before and after of what they were about", async () => {
  const first = await begun(lead, "2026-Q2");
  await madeReady(lead, first);
  const agreed = await agree(lead, {
    ...{
      audit: first,
      measure: "volume",
      what: "More rinsing",
      why: "Little volume",
      know: "The volume",
    },
    ...{ owner: "nobody", due: "2026-09-01" },
  });
  expect(agreed.wrong).toHaveProperty("owner");
  await pool().query(
    "insert into users (id, name, email, updated_at) values ('u', 'An owner', 'o@example.org', now())",
  );
  await pool().query("insert into grants (user_id, role) values ('u', 'clinical-lead')");
  await agree(lead, {
    ...{
      audit: first,
      measure: "volume",
      what: "More rinsing",
      why: "Little volume",
      know: "The volume",
    },
    ...{ owner: "u", due: "2026-09-01" },
  });
  await sign(lead, { audit: first, sure: "yes" });
  // That quarter has a signed audit already; opened again it comes to repeat this one.
  await restate(lead, { audit: id, reason: "It repeats the quarter before." });
  const next = await reAudit(lead, { audit: first });
  expect(next).toEqual({ audit: Number(id) });
  const { audits } = await auditsPage(lead);
  expect(audits.filter(({ aside }) => !aside).map(({ next: offered }) => offered)).toEqual([
    null,
    "October to December 2026",
  ]);
  const results = await resultsPage(lead, id);
  expect(results?.since?.lines.map(({ action, about }) => [action, about])).toEqual([
    ["More rinsing", "practice OAK"],
  ]);
  expect(results?.since?.lines[0]?.change).toBe("one of the two has no estimate or no interval");
  expect((await scopePage(lead, id))?.earlier.map(({ what }) => what)).toEqual(["More rinsing"]);
});
