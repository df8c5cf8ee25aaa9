import { expect, test } from "vitest";
import { listWords } from "@/lib/views/list-words";
import { type SafetyItemInput, safetyItemLine } from "@/lib/views/safety-items";
import { type SafetyInput, safetyLines } from "@/lib/views/safety-list";
import { openActions } from "@/lib/views/safety-open";
import { safetyTotals } from "@/lib/views/safety-totals";

// Expected values are worked by hand; the times are those of London in July, an hour after UTC (IANA).

const item: SafetyItemInput = {
  ...{ what: "separation", kind: "", practice: "OAK", chair: "OAK-1", sessionId: "V 1" },
  ...{
    zone: "Europe/London",
    tooth: "26",
    day: "2026-07-03",
    clinician: "C01",
    canal: "MB1",
    seq: 4,
  },
  ...{ events: 1, patientTold: false, reported: null, management: "pending", third: "apical" },
  ...{ fragmentMm: 3, met: null },
};
const met = {
  ...{ first: "naocl" as const, canalBefore: "MB1", seqBefore: 1 },
  ...{ startedBefore: "2026-07-03T08:10:00Z", startedAt: "2026-07-03T08:12:00Z" },
};

test("what is open is what is not done, or not written down; of a contact nothing", () => {
  const of = (
    what: SafetyItemInput["what"],
    told: boolean | null,
    reported: boolean | null,
    pending = false,
  ) => openActions({ what, patientTold: told, reported, pending });
  expect(of("separation", false, null)).toEqual(["patient not told"]);
  expect(of("separation", null, null, true)).toEqual([
    "not recorded whether the patient was told",
    "pending",
  ]);
  expect(of("separation", true, null)).toEqual([]);
  expect(of("incident", true, false)).toEqual(["not reported"]);
  expect(of("incident", null, null)).toEqual([
    "not recorded whether the patient was told",
    "not recorded whether it was reported",
  ]);
  expect(of("incident", true, true)).toEqual([]);
  expect(of("contact", null, null)).toEqual([]);
});

test("a separation says where it lies and what became of it, and what is missing", () => {
  expect(safetyItemLine(item)).toMatchObject({
    ...{ day: "3 Jul 2026", href: "/visits/OAK/V%201", visit: "visit V 1, tooth 26" },
    ...{ where: "OAK, chair OAK-1", what: "separation" },
    detail: "canal MB1, apical third, fragment 3.0 mm, pending",
    open: ["patient not told", "pending"],
  });
  const bare = { ...item, events: 2, third: null, fragmentMm: null, management: null };
  expect(safetyItemLine(bare)).toMatchObject({
    what: "2 separations",
    detail: "canal MB1, third not recorded, fragment not measured, what became of it not recorded",
  });
});

test("a contact says what met what, and by which order", () => {
  const contact = { ...item, what: "contact" as const, canal: "DB", seq: 2, met };
  expect(safetyItemLine({ ...contact, kind: "time" }).detail).toBe(
    "by time: hypochlorite at 09:10 in MB1, then chlorhexidine at 09:12 in DB",
  );
  const bySeq = { ...contact, kind: "seq", canal: "MB1", met: { ...met, first: "chx" as const } };
  expect(safetyItemLine(bySeq).detail).toBe(
    "by seq in canal MB1: chlorhexidine (1), then hypochlorite (2)",
  );
  expect(safetyItemLine({ ...bySeq, canal: "" }).detail).toMatch(/^by seq of what was written for/);
  expect(safetyItemLine(bySeq).open).toEqual([]);
});

test("counts are by kind and practice: contacts first, practices in order, with days, what is open and people masked", () => {
  const event = (of: Partial<SafetyInput>): SafetyInput => ({
    ...{ what: "separation", kind: "", practice: "OAK", day: "2026-07-03", events: 1 },
    ...{ patientTold: false, reported: null, pending: false, ...of },
  });
  const lines = safetyLines(
    [
      event({ what: "incident", kind: "extrusion", patientTold: true, reported: false }),
      event({}),
      event({ day: "2026-07-04", events: 2, patientTold: null }),
      event({ day: "2026-07-04", patientTold: true, pending: true }),
      event({ what: "contact", patientTold: null }),
      event({ practice: "ELM" }),
    ],
    [{ what: "separation", kind: "", practice: "OAK", patients: 5 }],
  );
  expect(lines.map((line) => [line.what.split(",")[0], line.practice, line.events])).toEqual([
    ["hypochlorite next to chlorhexidine", "OAK", "1"],
    ["separation", "ELM", "1"],
    ["separation", "OAK", "4"],
    ["extrusion", "OAK", "1"],
  ]);
  expect(lines[2]).toMatchObject({
    days: "3 Jul 2026; 4 Jul 2026",
    told: "yes 1, no 1, not recorded 2",
    reported: "",
    open: "patient not told 1, not recorded whether the patient was told 2, pending 1",
    patients: "5",
  });
  expect(lines[0]).toMatchObject({ told: "", reported: "", open: "" });
  expect(lines[3]).toMatchObject({ reported: "no 1", open: "not reported 1" });
});

test("the totals are a sentence, and nothing recorded is not nothing happened", () => {
  const none = {
    contact: 0,
    "separation-untold": 0,
    "separation-pending": 0,
    incident: 0,
    open: 0,
  };
  expect(safetyTotals(none, false)).toBe(
    "The records of this period hold no safety item. What was not written down does not show here.",
  );
  expect(safetyTotals({ ...none, contact: 1, incident: 2 }, true)).toBe(
    "Of your work: 1 contact of hypochlorite with chlorhexidine; 2 incidents. Nothing of it is open.",
  );
  expect(safetyTotals({ ...none, "separation-untold": 3, open: 3 }, false)).toMatch(
    /3 separations of which .* about 3 of them\.$/,
  );
  expect(listWords(2, 25, 30, "None.")).toBe("26 to 30 of 30, latest first");
  expect(listWords(3, 25, 30, "None.")).toMatch(/^There are 30; this page lies beyond/);
  expect(listWords(1, 25, 0, "None.")).toBe("None.");
});
