import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { leadReach, narrowed } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import type { Viewer } from "@/lib/access/viewer";
import { quarter } from "@/lib/records/period";
import { AskedWrongly } from "@/lib/reports/asked-period";
import {
  answerAboutException,
  askAboutException,
  closeExceptionQuery,
  enterOwnException,
  withdrawOwnException,
} from "@/lib/reports/exception-acts";
import { exceptionUnit } from "@/lib/reports/exception-unit";
import { exceptionsPage } from "@/lib/reports/exceptions-page";
import { figures } from "@/lib/reports/figures";
import { disconnect, pool } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { freshDatabase } from "../fresh-database";
import { bringIn, canal, visit } from "../store/bring-in";
import { viewerAs } from "../store/comparing/viewers";

// Expected values are worked by hand from the rows below and the project's own rules of who may do what.

const lead = viewerAs("clinical-lead");
const leadOfElm = viewerAs("clinical-lead", "ELM");
const one = viewerAs("clinician", "OAK", "OAK/C01");
const two = viewerAs("clinician", "OAK", "OAK/C02");
const both: Viewer = { ...one, grants: [...one.grants, ...leadOfElm.grants] };

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  // Ten visits of C01's whose timer was not reset; C02 did one canal of the first. One visit at ELM.
  const sessions = Array.from({ length: 10 }, (_, place) => `V-${place}`);
  await bringIn({
    sessions: [
      ...sessions.map((session_id) => ({ ...visit, session_id, patient: session_id })),
      { ...visit, session_id: "E-1", practice: "ELM", chair: "ELM-1", patient: "elm" },
    ],
    canals: [
      ...sessions.map((session_id) => ({ ...canal, session_id, timer_reset: "no" })),
      { ...canal, session_id: "V-0", canal: "DB", clinician: "C02", timer_reset: "no" },
      { ...canal, session_id: "E-1" },
    ],
    steps: [
      { session_id: "V-9", canal: "", step: "dam", status: "excepted", reason: "not-possible" },
    ],
  });
  await pool().query(
    `insert into own_terms (practice, kind, code, words, by, retired) values
       ('OAK', 'reason', 'own-power', 'Power cut', 'x', false), ('OAK', 'reason', 'own-old', 'Old', 'x', true),
       ('ELM', 'reason', 'own-elm', 'Elm', 'x', false)`,
  );
});
afterEach(async () => {
  await pool().query("truncate entered_exceptions, exception_queries");
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const form = (session = "V-1", more: Record<string, string> = {}) => ({
  ...{ practice: "OAK", session, criterion: "timer-reset", canal: "MB1" },
  ...{ reason: "equipment-failure", note: "", ...more },
});
const timerReset = async () => {
  const [figure] = await figures(narrowed(leadReach(lead), "OAK"), {
    ...{ measures: ["criterion/timer-reset"], periods: [quarter(2026, 3)], by: ["group"] },
  });
  return figure?.kind === "rate" ? [figure.excepted, figure.notMet, figure.denominator] : [];
};

describe("entering", () => {
  it("takes the unit out of the figures at once, and withdrawing brings it back", async () => {
    const before = [{}, 11, 11];
    expect(await timerReset()).toEqual(before);
    expect((await enterOwnException(one, form())).done).toBeDefined();
    expect(await timerReset()).toEqual([{ "equipment-failure": 1 }, 10, 10]);
    expect((await withdrawOwnException(one, form())).done).toBeDefined();
    expect(await timerReset()).toEqual(before);
    expect((await withdrawOwnException(one, form())).wrong?.form).toMatch(/already/);
  });

  it("takes a reason of the list or the practice's own in use, for a unit that is one's own", async () => {
    const wrong = async (more: Record<string, string>, session = "V-1", viewer = one) =>
      Object.keys((await enterOwnException(viewer, form(session, more))).wrong ?? {});
    expect(await wrong({ reason: "own-power" })).toEqual([]);
    for (const reason of ["", "allergy", "own-old", "own-elm"])
      expect(await wrong({ reason }), reason).toEqual(["reason"]);
    expect(await wrong({ note: "x".repeat(501) })).toEqual(["note"]);
    // The whole visit is not C01's alone in V-0; elsewhere it is.
    expect(await wrong({ canal: "" }, "V-0")).toEqual(["canal"]);
    expect(await wrong({ canal: "" }, "V-2")).toEqual([]);
    expect(await wrong({ canal: "DB" }, "V-0")).toEqual(["canal"]);
    expect(await wrong({ canal: "DB" }, "V-0", two)).toEqual([]);
    // A criterion of visits has no canals.
    expect(await wrong({ criterion: "isolation", reason: "not-possible" })).toEqual(["canal"]);
    for (const criterion of ["length-recorded", "activation", "line-rinse", "no-such"])
      expect(await wrong({ criterion }), criterion).toEqual(["form"]);
  });

  it("is refused of another's visit and of other roles", async () => {
    await expect(enterOwnException(two, form("V-1"))).rejects.toThrow(Refused);
    await expect(enterOwnException(one, form("E-1", { practice: "ELM" }))).rejects.toThrow(Refused);
    for (const role of [
      "clinical-lead",
      "quality-officer",
      "record-keeper",
      "administrator",
    ] as const)
      await expect(enterOwnException(viewerAs(role), form())).rejects.toThrow(Refused);
  });
});

describe("asking", () => {
  it("goes from the lead to whoever did the work and back", async () => {
    await enterOwnException(one, form());
    expect((await askAboutException(lead, form("V-1", { question: "Which?" }))).done).toBeDefined();
    expect((await exceptionsPage(one, {})).open.map(({ state }) => state)).toEqual(["asked"]);
    expect((await exceptionsPage(two, {})).open).toEqual([]);
    expect(
      (await answerAboutException(one, form("V-1", { answer: "The motor." }))).done,
    ).toBeDefined();
    const [line] = (await exceptionsPage(lead, { asked: "answered" })).lines;
    expect(line?.asked).toBe("answered");
    expect((await closeExceptionQuery(lead, form())).done).toBeDefined();
    expect((await exceptionsPage(lead, {})).open).toEqual([]);
    const unit = await exceptionUnit(one, form(), "MB1");
    const [asked] = unit?.there[0]?.queries ?? [];
    expect(asked?.says.map(({ term, words }) => `${term}: ${words}`)).toEqual([
      ...["Asked: Which?", "Answered: The motor.", "Closed: "],
    ]);
  });

  it("is about an exception that is there, in words, and within the reach", async () => {
    const ask = (viewer: Viewer, question: string, session = "V-1") =>
      askAboutException(viewer, form(session, { question }));
    expect((await ask(lead, "Which?")).wrong?.form).toMatch(/no such exception/);
    expect((await ask(lead, "Which?", "V-99")).wrong?.form).toMatch(/no such exception/);
    await enterOwnException(one, form());
    expect(Object.keys((await ask(lead, " ")).wrong ?? {})).toEqual(["question"]);
    expect(Object.keys((await ask(lead, "x".repeat(501))).wrong ?? {})).toEqual(["question"]);
    await expect(ask(leadOfElm, "Which?")).rejects.toThrow(Refused);
    await expect(ask(one, "Which?")).rejects.toThrow(Refused);
    await expect(answerAboutException(lead, form("V-1", { answer: "So." }))).rejects.toThrow(
      Refused,
    );
    await expect(closeExceptionQuery(one, form())).rejects.toThrow(Refused);
  });
});

describe("the page of a unit", () => {
  it("offers a clinician their own units and the reasons, and a lead a question", async () => {
    await enterOwnException(one, form("V-0", { note: "a note of mine" }));
    const own = await exceptionUnit(one, form("V-0"), "MB1");
    expect(own?.form?.units).toEqual([{ value: "MB1", words: "canal MB1" }]);
    expect(own?.form?.reasons.map(({ value }) => value)).toEqual([
      "equipment-failure",
      "own-power",
    ]);
    const may = { mayWithdraw: true, mayAsk: false, mayAnswer: false, mayClose: false };
    expect(own?.there).toMatchObject([{ canal: "MB1", note: "a note of mine", ...may }]);
    const asLead = await exceptionUnit(lead, form("V-0"), "");
    expect(asLead?.there).toMatchObject([{ ...may, mayWithdraw: false, mayAsk: true }]);
    expect([asLead?.form, asLead?.why]).toEqual([
      null,
      expect.stringMatching(/whoever did the work/),
    ]);
    // Nobody excepts every canal by not naming one.
    const alone = async (canalName: string) =>
      (await exceptionUnit(one, form("V-2"), canalName))?.form;
    expect((await alone(""))?.units.map(({ value }) => value)).toEqual(["MB1", ""]);
    expect([(await alone(""))?.unit, (await alone("P"))?.unit]).toEqual(["MB1", "MB1"]);
    // Another who worked at the visit sees what is theirs.
    expect((await exceptionUnit(two, form("V-0"), ""))?.there).toEqual([]);
  });

  it("says why nothing can be entered", async () => {
    const why = async (criterion: string) =>
      (await exceptionUnit(one, form("V-1", { criterion }), ""))?.why;
    expect(await why("length-recorded")).toMatch(/foresees no exception/);
    expect(await why("isolation")).toBe("");
    expect((await exceptionUnit(two, form("V-0", { criterion: "isolation" }), ""))?.why).toMatch(
      /your own work/,
    );
  });

  it("is not there for what there is not, and refused beyond the reach", async () => {
    expect(await exceptionUnit(lead, form("V-1", { criterion: "no-such" }), "")).toBeNull();
    expect(await exceptionUnit(lead, form("V-99"), "")).toBeNull();
    await expect(exceptionUnit(two, form("V-1"), "")).rejects.toThrow(Refused);
    await expect(exceptionUnit(leadOfElm, form("V-1"), "")).rejects.toThrow(Refused);
    await expect(exceptionUnit(viewerAs("quality-officer"), form(), "")).rejects.toThrow(Refused);
    // A lead elsewhere who is a clinician here sees their own; at home they ask.
    expect((await exceptionUnit(both, form("V-1"), ""))?.form).not.toBeNull();
    await expect(exceptionUnit(both, form("E-2", { practice: "ELM" }), "")).resolves.toBeNull();
  });
});

describe("the list", () => {
  it("shows a lead everybody's with the shares, and a clinician their own without", async () => {
    await enterOwnException(one, form());
    await enterOwnException(two, form("V-0", { canal: "DB" }));
    const page = await exceptionsPage(lead, { period: "2026-Q3" });
    expect(page.lines.map((line) => `${line.clinician} ${line.unit} ${line.criterion}`)).toEqual([
      "C02 tooth 26, canal DB Timer reset for the canal",
      "C01 tooth 26, canal MB1 Timer reset for the canal",
      "C01 tooth 26, the visit Isolation by rubber dam",
    ]);
    expect(page.rates?.rows.map((row) => [row.clinician, row.excepted, row.eligible])).toEqual([
      ["C01", "1", "10"],
      ["C01", "1", "10"],
      ["C02", "1", "1"],
    ]);
    const own = await exceptionsPage(one, { period: "2026-Q3" });
    expect([own.as, own.rates, own.lines.length]).toEqual(["own", null, 2]);
    expect(own.filters.map(({ name }) => name)).not.toContain("clinician");
    expect(JSON.stringify(own)).not.toContain("C02");
    expect((await exceptionsPage(leadOfElm, { period: "2026-Q3" })).lines).toEqual([]);
  });

  it("is narrowed by its address, and a clinician cannot ask for another's", async () => {
    await enterOwnException(one, form());
    const lines = async (viewer: Viewer, address: Record<string, string>) =>
      (await exceptionsPage(viewer, { period: "2026-Q3", ...address })).lines.length;
    expect(await lines(lead, { criterion: "isolation" })).toBe(1);
    expect(await lines(lead, { clinician: "OAK/C02" })).toBe(0);
    expect(await lines(lead, { reason: "\0", page: "x", asked: "soon" })).toBe(2);
    expect(await lines(two, { clinician: "OAK/C01" })).toBe(0);
    await expect(exceptionsPage(one, { period: "soon" })).rejects.toThrow(AskedWrongly);
    expect((await exceptionsPage(both, { view: "own", period: "2026-Q3" })).as).toBe("own");
    expect((await exceptionsPage(both, { period: "2026-Q3" })).as).toBe("lead");
    for (const role of ["quality-officer", "record-keeper", "administrator"] as const)
      await expect(exceptionsPage(viewerAs(role), {})).rejects.toThrow(Refused);
  });

  it("carries no note: it is on the unit's page alone", async () => {
    await enterOwnException(one, form("V-1", { note: "a word in confidence" }));
    const page = await exceptionsPage(lead, { period: "2026-Q3" });
    expect(JSON.stringify(page)).not.toContain("in confidence");
  });
});
