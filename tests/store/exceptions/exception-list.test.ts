import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import { quarter } from "@/lib/records/period";
import { disconnect } from "@/lib/store/database";
import { enterException, withdrawException } from "@/lib/store/exceptions/entered";
import {
  type ExceptedStep,
  type ExceptionsAsked,
  exceptionChoices,
  exceptionList,
  exceptionsAt,
} from "@/lib/store/exceptions/exception-list";
import { answerQuery, askAbout } from "@/lib/store/exceptions/queries";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { visitHead } from "@/lib/store/visit/visit-head";
import { freshDatabase } from "../../fresh-database";
import { bringIn } from "../bring-in";
import { at, lead, leadOfElm, officer, one, rows, two } from "./two-clinicians";

// Expected values are worked by hand from the rows of two-clinicians.ts and what is entered below.

const dam: ExceptedStep = {
  criterion: "isolation",
  step: "dam",
  only: null,
  allBut: [],
  from: null,
  until: null,
};
const asked: ExceptionsAsked = { period: quarter(2026, 3), limit: 50, offset: 0 };

let database: ScratchDatabase;
beforeAll(async () => {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
  await bringIn(rows);
  const entered = { userId: "u", reason: "own-latex", note: "a note" };
  await enterException(two, at("MB1", "main-irrigant", "V-2"), entered);
  await enterException(one, at("DB", "chelator"), entered);
  await withdrawException(one, at("DB", "chelator"));
  await askAbout(lead, at("MB1", "main-irrigant", "V-2"), "Which allergy?");
  await askAbout(lead, at("MB1", "timer-reset"), "Was it mended?");
  await answerQuery(two, at("MB1", "timer-reset"), "Yes.");
});
afterAll(async () => {
  await disconnect();
  await database.drop();
});

const found = async (
  reach: FiguresReach | OwnReach,
  more: Partial<ExceptionsAsked> = {},
  steps = [dam],
) =>
  (await exceptionList(reach, steps, { ...asked, ...more })).exceptions.map(
    (row) => `${row.sessionId}/${row.canal} ${row.criterion} ${row.reason} ${row.source}`,
  );
const ofV2 = "V-2/MB1 main-irrigant own-latex page";
const ofDam = "V-1/ isolation not-possible step";
const ofTimer = "V-1/MB1 timer-reset equipment-failure records";

describe("the list", () => {
  it("has what the records bear, excepted steps and what was entered, but nothing withdrawn", async () => {
    expect(await found(lead)).toEqual([ofV2, ofDam, ofTimer]);
    const { exceptions, all } = await exceptionList(lead, [dam], { ...asked, limit: 1 });
    expect(all).toBe(3);
    expect(exceptions[0]).toMatchObject({
      practice: "OAK",
      tooth: "26",
      day: "2026-07-10",
      clinician: "C02",
      by: "A clinician",
      asked: "asked",
    });
    expect(await found(lead, { limit: 1, offset: 2 })).toEqual([ofTimer]);
  });

  it("is of the period and the practices of the reach, and of a clinician their own work", async () => {
    expect(await found(lead, { period: quarter(2026, 2) })).toEqual([]);
    expect(await found(leadOfElm)).toEqual([]);
    expect(await found(one)).toEqual([ofDam]);
    expect(await found(two)).toEqual([ofV2, ofTimer]);
    await expect(found(officer)).rejects.toThrow(RangeError);
  });

  it("is narrowed to a criterion, a reason, a clinician and how a question stands", async () => {
    expect(await found(lead, { criterion: "isolation" })).toEqual([ofDam]);
    expect(await found(lead, { reason: "own-latex" })).toEqual([ofV2]);
    expect(await found(lead, { worker: "OAK/C02" })).toEqual([ofV2, ofTimer]);
    expect(await found(lead, { asked: "asked" })).toEqual([ofV2]);
    expect(await found(lead, { asked: "answered" })).toEqual([ofTimer]);
    expect(await found(lead, { asked: "never" })).toEqual([ofDam]);
    expect(await found(lead, { asked: "closed" })).toEqual([]);
  });

  it("takes an excepted step for a criterion only where and when that is in force", async () => {
    const only = (step: Partial<ExceptedStep>) =>
      found(lead, { criterion: "isolation" }, [{ ...dam, ...step }]);
    expect(await only({ only: "OAK", from: "2026-07-03", until: "2026-07-04" })).toEqual([ofDam]);
    expect(await only({ only: "ELM" })).toEqual([]);
    expect(await only({ allBut: ["OAK"] })).toEqual([]);
    expect(await only({ allBut: ["ELM"] })).toEqual([ofDam]);
    expect(await only({ from: "2026-07-04" })).toEqual([]);
    expect(await only({ until: "2026-07-03" })).toEqual([]);
    expect(await only({ step: "patency" })).toEqual([]);
  });
});

it("what a period can be narrowed to is what there is, with counts", async () => {
  const choices = await exceptionChoices(lead, [dam], asked.period);
  expect(choices.map((one) => [one.criterion, one.reason, one.worker, one.exceptions])).toEqual([
    ["isolation", "not-possible", "OAK/C01", 1],
    ["main-irrigant", "own-latex", "OAK/C02", 1],
    ["timer-reset", "equipment-failure", "OAK/C02", 1],
  ]);
});

it("at one visit, those of a criterion, and of a clinician their own", async () => {
  const head = await visitHead(lead, "OAK", "V-1");
  if (!head) throw new Error("the visit is not found");
  const canals = async (reach: FiguresReach | OwnReach, criterion: string) =>
    (await exceptionsAt(reach, [dam], head, criterion)).map(({ canal }) => canal);
  expect(await canals(lead, "timer-reset")).toEqual(["MB1"]);
  expect(await canals(two, "timer-reset")).toEqual(["MB1"]);
  expect(await canals(one, "timer-reset")).toEqual([]);
  expect(await canals(one, "isolation")).toEqual([""]);
  expect(await canals(lead, "chelator")).toEqual([]);
});

it("the note goes with the exception at its visit, and in no list", async () => {
  const head = await visitHead(lead, "OAK", "V-2");
  if (!head) throw new Error("the visit is not found");
  const [noted] = await exceptionsAt(two, [dam], head, "main-irrigant");
  expect(noted?.note).toBe("a note");
  expect(JSON.stringify(await exceptionList(lead, [dam], asked))).not.toContain("a note");
});
