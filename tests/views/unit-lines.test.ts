import { expect, test } from "vitest";
import { measureAddress, visitAddress } from "@/lib/views/lead-address";
import { pageWords, statesOf, unitLine } from "@/lib/views/unit-lines";
import { measured } from "./measured";

// Expected words: computed by hand.
const unit = {
  practice: "P1",
  chair: "P1-1",
  clinician: "C01",
  day: "2026-07-03",
  sessionId: "S/1",
  tooth: "16",
  canal: "MB1",
  seq: null,
  state: "recorded",
  reason: null,
  value: 18.62,
};

test("a unit leads to its visit and shows its value in its unit", () => {
  expect(unitLine(measured("volume"), unit)).toMatchObject({
    day: "3 Jul 2026",
    href: "/visits/P1/S%2F1",
    whose: "C01, P1-1",
    what: "tooth 16, canal MB1",
    state: "18.6 mL",
    mark: null,
    why: null,
  });
});

test("what is not recorded has no value", () => {
  expect(
    unitLine(measured("volume"), { ...unit, state: "not-recorded", value: null }),
  ).toMatchObject({
    state: "not recorded",
    mark: "missing",
  });
});

test("what is left out or excepted says why", () => {
  expect(
    unitLine(measured("volume"), {
      ...unit,
      state: "left-out",
      reason: "not-prepared",
      value: null,
    }).state,
  ).toBe("left out: not prepared");
  expect(
    unitLine(measured("criterion/isolation"), {
      ...unit,
      canal: null,
      state: "excepted",
      reason: "not-possible",
      value: null,
    }),
  ).toMatchObject({
    what: "tooth 16",
    state: "excepted: not possible",
    mark: "excepted",
    why: "/explanations/isolation/P1/visit/S%2F1",
  });
});

test("an excepted unit bears the practice's own words for its reason, else the words of the exceptions' form", () => {
  const excepted = { ...unit, state: "excepted", value: null };
  const words = (reason: string) =>
    unitLine(measured("criterion/chelator"), { ...excepted, reason }, true, [
      { practice: "P1", code: "own-short", words: "The chair was needed", retired: true },
      { practice: "P2", code: "own-long", words: "Elsewhere", retired: false },
    ]).state;
  expect(words("own-short")).toBe("excepted: The chair was needed");
  expect(words("own-long")).toBe("excepted: long");
  expect(words("alternative")).toBe("excepted: another agent was used instead");
});

test("a chair on a day has no visit to lead to", () => {
  const day = {
    ...unit,
    clinician: null,
    sessionId: null,
    tooth: null,
    canal: null,
    state: "met",
    value: null,
  };
  expect(unitLine(measured("criterion/line-rinse"), day)).toMatchObject({
    href: null,
    whose: "P1-1",
    what: "chair and day",
    mark: "met",
    why: "/explanations/line-rinse/P1/chair/P1-1/2026-07-03",
  });
});

test("a measure has its own outcomes and no others", () => {
  expect(statesOf(measured("volume")).map((state) => state.name)).toEqual([
    "recorded",
    "not-recorded",
    "left-out",
  ]);
  expect(statesOf(measured("separation-per-use")).map((state) => state.name)).toEqual([
    "separated",
    "no-separation",
    "not-recorded",
  ]);
  expect(statesOf(measured("criterion/length-recorded")).map((state) => state.name)).not.toContain(
    "excepted",
  );
});

test("pages are told by the units on them", () => {
  expect(pageWords(1, 25, 0)).toBe("No unit is like this.");
  expect(pageWords(2, 25, 30)).toBe("26 to 30 of 30, latest first");
});

test("an address leaves out what is not chosen and keeps what could break it", () => {
  expect(
    measureAddress(
      "volume",
      { period: "2026-Q3", practice: undefined, clinician: "P1/C01" },
      "#records",
    ),
  ).toBe("/lead/measures/volume?period=2026-Q3&clinician=P1%2FC01#records");
  expect(measureAddress("volume", {})).toBe("/lead/measures/volume");
  expect(visitAddress("P 1", "a#b")).toBe("/visits/P%201/a%23b");
});
