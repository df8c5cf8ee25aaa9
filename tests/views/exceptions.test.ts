import { expect, test } from "vitest";
import { exceptionShares } from "@/lib/audit/exception-shares";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { exceptionAddress } from "@/lib/views/exception-address";
import { type ExceptionInput, exceptionWords } from "@/lib/views/exception-line-words";
import { queryLine } from "@/lib/views/exception-queries";
import { exceptionRates } from "@/lib/views/exception-rates";
import { exceptionRemark, type OwnReason, reasonsOffered } from "@/lib/views/exception-reason";
import { listAddress } from "@/lib/views/list-address";
import { clinician, rateFigure } from "./made-figure";

// Expected values are worked by hand; intervals are those of tests/audit/exception-shares.test.ts.

const criterionOf = (id: string): Criterion => {
  const found = defaults.find((one) => one.id === id);
  if (!found) throw new Error(`there is no ${id}`);
  return found;
};
const mainIrrigant = criterionOf("main-irrigant");
const own: OwnReason[] = [
  { practice: "OAK", code: "own-latex", words: "Latex only", retired: false },
  { practice: "OAK", code: "own-old", words: "An old word", retired: true },
  { practice: "ELM", code: "own-elm", words: "Elm's", retired: false },
];

test("the reasons offered are the criterion's and the practice's own in use", () => {
  expect(reasonsOffered(mainIrrigant, "OAK", own)).toEqual([
    { value: "allergy", words: "allergy" },
    { value: "own-latex", words: "Latex only" },
  ]);
  expect(reasonsOffered(criterionOf("use-limit"), "PINE", own)).toEqual([]);
});

test("a reason on no list is pointed out, and so is what counts nowhere", () => {
  const remark = (reason: string, of: Criterion | undefined) =>
    exceptionRemark(reason, "OAK", of, own);
  expect(remark("allergy", mainIrrigant)).toBe("");
  expect(remark("own-old", mainIrrigant)).toBe("");
  expect(remark("own-elm", mainIrrigant)).toMatch(/^On no list; it counts/);
  expect(remark("weather", mainIrrigant)).toMatch(/^On no list; it counts/);
  expect(remark("allergy", criterionOf("length-recorded"))).toMatch(/foresees no exception/);
  expect(remark("allergy", undefined)).toMatch(/not in force/);
});

const listed: ExceptionInput = {
  ...{ practice: "OAK", sessionId: "V/1", canal: "MB1", criterion: "main-irrigant", tooth: "26" },
  ...{ day: "2026-07-03", clinician: "C01", reason: "own-latex", source: "page", step: null },
  ...{ by: "A. Person", at: new Date("2026-07-03T10:00:00Z"), asked: "asked" },
};
const about = { inForce: mainIrrigant, title: "Main", own, zone: "Europe/London" };

test("an exception in words says its unit, reason, and where, by whom and when it was written down", () => {
  expect(exceptionWords(listed, about)).toMatchObject({
    ...{ day: "3 Jul 2026", unit: "tooth 26, canal MB1", reason: "Latex only", remark: "" },
    ...{ href: "/exceptions/OAK/V%2F1/main-irrigant?canal=MB1", asked: "asked, not answered" },
    source: "entered here by A. Person, 3 Jul 2026, 11:00",
  });
  const step = { ...listed, source: "step" as const, step: "dam", canal: "", asked: null };
  expect(exceptionWords(step, about)).toMatchObject({
    ...{ unit: "tooth 26, the visit", source: "step dam excepted, in the records", asked: "" },
    href: "/exceptions/OAK/V%2F1/main-irrigant",
  });
  const bare = { ...listed, source: "records" as const, by: null, at: null };
  expect(exceptionWords(bare, about).source).toBe("in the records");
});

test("addresses leave out what is not chosen", () => {
  expect(listAddress("/x", { a: "1", b: undefined, c: "" }, "#list")).toBe("/x?a=1#list");
  expect(listAddress("/x", {})).toBe("/x");
  expect(exceptionAddress({ ...listed, canal: "é&1" })).toMatch(/\?canal=%C3%A9%261$/);
});

test("a question is asked, answered, closed, each with who and when", () => {
  const at = new Date("2026-07-10T08:00:00Z");
  const asked = {
    ...{ question: "Why?", by: "Lead", at, answer: null, answeredBy: null, answeredAt: null },
    ...{ closedBy: null, closedAt: null },
  };
  const says = (query: typeof asked | Parameters<typeof queryLine>[0]) => {
    const line = queryLine(query, "Europe/London");
    return [line.state, ...line.says.map(({ term, words }) => `${term}: ${words}`)];
  };
  expect(says(asked)).toEqual(["asked", "Asked: Why?"]);
  const answered = { ...asked, answer: "So.", answeredBy: "C", answeredAt: at };
  expect(says(answered)).toEqual(["answered", "Asked: Why?", "Answered: So."]);
  const closed = { closedBy: "Lead", closedAt: at };
  expect(says({ ...answered, ...closed }).at(-1)).toBe("Closed: ");
  expect(says({ ...asked, ...closed })).toEqual([
    "closed",
    "Asked: Why?",
    "Closed: without an answer",
  ]);
  expect(queryLine(asked, "Europe/London").says[0]?.who).toBe("Lead, 10 Jul 2026, 09:00");
});

test("a high share is a finding in a sentence, never ranked, and the note says what chance does", () => {
  const figure = (
    subject: Parameters<typeof rateFigure>[0]["subject"],
    excepted: number,
    eligible: number,
  ) =>
    rateFigure({
      ...{ measure: "criterion/timer-reset", ...(subject ? { subject } : {}) },
      ...{ excepted: { allergy: excepted }, denominator: eligible - excepted },
      ...{ numerator: eligible - excepted, notMet: 0 },
    });
  const shares = exceptionShares([
    figure({ kind: "group" }, 21, 550),
    figure(clinician("B", "OAK"), 9, 410),
    figure(clinician("A", "OAK"), 12, 140),
  ]);
  const rates = exceptionRates([{ practice: "OAK", shares }], () => "Timer reset");
  expect(rates.rows.map((row) => [row.clinician, row.share, row.above])).toEqual([
    ["B", "2.20 %", false],
    ["A", "8.57 %", true],
  ]);
  expect(rates.findings).toEqual([
    {
      ...{ id: "OAK/criterion/timer-reset/OAK/A", look: true },
      words:
        "A of OAK, Timer reset: 12 of 140 eligible units are excepted, 8.57 % (95 % interval 4.51 % to 14.5 %); in the practice without them 2.20 % of 410. Look at the reasons.",
    },
  ]);
  expect(rates.note).toContain("2 shares are compared; chance alone puts up to one in 40 above");
  expect(rates.note).toContain("not a verdict");
});

test("without a high share the finding says so, and why nothing was compared", () => {
  const none = exceptionRates([{ practice: "OAK", shares: [] }], String);
  expect(none.findings[0]?.words).toMatch(/^No unit that counts by clinician is excepted/);
  expect(none.findings[0]?.look).toBe(false);
});
