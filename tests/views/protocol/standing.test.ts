import { expect, test } from "vitest";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { mayBegin } from "@/lib/protocol/may-begin";
import type { Protocol, Version } from "@/lib/protocol/protocol";
import { addedUp } from "@/lib/views/protocol/added-up";
import { criterionState } from "@/lib/views/protocol/criterion-state";
import { type JudgedExample, previewView } from "@/lib/views/protocol/preview-view";
import {
  nextWords,
  protocolView,
  standingSentence,
  standingWords,
} from "@/lib/views/protocol/protocol-view";
import { versionLines } from "@/lib/views/protocol/version-lines";

// Expected values are worked by hand from the dates; the interval is Wilson's, computed with R: prop.test(8, 10, correct = FALSE).

const floor = defaults.find(({ id }) => id === "hypochlorite-floor") as Criterion;
const limit = defaults.find(({ id }) => id === "flow-limit") as Criterion;
let ids = 0;
const version = (from: string, more: Partial<Version> = {}): Version => ({
  ...{ id: ++ids, practice: "NORTH", criterion: floor, inForce: true, from },
  ...{ writtenOn: "2026-06-01", reason: "Why not.", by: "A. Lead", at: new Date(0), ...more },
});
const of = (...versions: Version[]): Protocol => ({ versions });
const own = { ...floor, id: "own-floor", title: "Own floor" };
const today = "2026-07-15";
const stateOf = (protocol: Protocol, id = floor.id) =>
  criterionState(protocol, { id, practice: "NORTH", today });

test("a criterion stands as it did from the beginning until a version begins", () => {
  expect(stateOf(of())).toMatchObject({
    inForce: floor,
    since: null,
    next: null,
    everBefore: true,
  });
  const changed = { ...floor, target: 0.9 };
  const coming = of(version("2026-08-01", { criterion: changed }));
  expect(stateOf(coming)).toMatchObject({
    inForce: floor,
    next: { from: "2026-08-01", criterion: changed },
  });
  const state = stateOf(coming);
  expect(state && nextWords(state)).toBe("changes on 1 Aug 2026");
  expect(stateOf(of(version("2026-07-15", { criterion: changed })))).toMatchObject({
    ...{ inForce: changed, since: "2026-07-15", next: null },
  });
  expect(stateOf(of(version("2026-08-01", { practice: "SOUTH" })))?.next).toBeNull();
});

test("a change is told beside since when there was something in force without a break", () => {
  const standing = (protocol: Protocol, id = floor.id) => {
    const state = stateOf(protocol, id);
    return state && standingSentence(state, protocol, "NORTH");
  };
  expect(standing(of(version("2026-07-01"), version("2026-07-10")))).toBe(
    "In force from the beginning, changed on 10 Jul 2026.",
  );
  expect(
    standing(
      of(version("2026-06-01", { criterion: own }), version("2026-07-10", { criterion: own })),
      own.id,
    ),
  ).toBe("In force since 1 Jun 2026, changed on 10 Jul 2026.");
  // Out of force in between: what holds now began after the gap.
  expect(standing(of(version("2026-06-01", { inForce: false }), version("2026-07-01")))).toBe(
    "In force since 1 Jul 2026.",
  );
});

test("one that ends, has ended, or has not begun says so", () => {
  const ends = of(version("2026-08-01", { inForce: false }));
  const state = stateOf(ends);
  expect(state && nextWords(state)).toBe("goes out of force on 1 Aug 2026");
  const ended = of(version("2026-07-01", { inForce: false, reason: "Not asked for." }));
  const over = stateOf(ended);
  expect(over).toMatchObject({ inForce: null, next: null });
  expect(over && standingWords(over, ended, "NORTH")).toBe(
    "out of force since 1 Jul 2026: Not asked for",
  );
  expect(over && standingSentence(over, ended, "NORTH")).toBe(
    "Out of force since 1 Jul 2026: Not asked for.",
  );
  expect(state && standingSentence(state, ends, "NORTH")).toBe(
    "In force from the beginning; it goes out of force on 1 Aug 2026.",
  );
  const begins = of(version("2026-08-01", { criterion: own }));
  const later = stateOf(begins, own.id);
  expect(later).toMatchObject({ inForce: null, everBefore: false });
  expect(later && [standingWords(later, begins, "NORTH"), nextWords(later)]).toEqual([
    "not yet in force",
    "begins on 1 Aug 2026",
  ]);
  expect(stateOf(of(), "own-nothing")).toBeUndefined();
});

test("the protocol of a practice: 20 of 23 from the beginning, its own apart, and why the rest are not", () => {
  const view = protocolView(of(version("2026-07-01", { criterion: own })), "NORTH", today);
  expect([view.inForce.length, view.own.length, view.notInForce.length]).toEqual([20, 1, 3]);
  expect(view.own[0]).toMatchObject({
    title: "Own floor",
    standing: "since 1 Jul 2026",
    target: "80 %",
  });
  expect(view.notInForce.map(({ id, standing }) => [id, standing])).toEqual([
    ["flow-limit", "no limit is set; it comes into force when the practice sets one"],
    ["activation", "it comes into force when the practice asks for it"],
    ["speed-torque", "no limit is set; it comes into force when the practice sets one"],
  ]);
  expect(protocolView(of(version("2026-07-01", { criterion: own })), "SOUTH", today).own).toEqual(
    [],
  );
});

test("versions are listed by their day, the last first; one of the same day replaces the earlier", () => {
  const protocol = of(
    version("2026-06-10"),
    version("2026-07-10"),
    version("2026-07-10", { inForce: false }),
    version("2026-08-10"),
  );
  const lines = versionLines(protocol, { id: floor.id, practice: "NORTH", today }, {});
  expect(lines.map(({ from, state, mayWithdraw }) => [from, state, mayWithdraw])).toEqual([
    ["10 Aug 2026", "to come", true],
    ["10 Jul 2026", "out of force", false],
    ["10 Jul 2026", "replaced before it held", false],
    ["10 Jun 2026", "before", false],
  ]);
  expect(lines[1]?.demands).toBeNull();
  expect(lines[0]?.demands).toContain("10 mL or more");
});

test("a change may not alter a past figure", () => {
  const may = (protocol: Protocol, id: string, from: string) =>
    mayBegin(protocol, { id, practice: "NORTH", from, today });
  expect(may(of(), floor.id, today)).toBe(true);
  expect(may(of(), floor.id, "2026-07-14")).toBe(false);
  // Never in force, or in force only from today or elsewhere: any day.
  expect(may(of(), own.id, "2025-01-01")).toBe(true);
  expect(may(of(), limit.id, "2025-01-01")).toBe(true);
  expect(may(of(version(today, { criterion: own })), own.id, "2025-01-01")).toBe(true);
  expect(may(of(version("2026-07-14", { criterion: own })), own.id, "2025-01-01")).toBe(false);
  expect(
    may(of(version("2026-01-01", { criterion: own, practice: "SOUTH" })), own.id, "2025-01-01"),
  ).toBe(true);
  // Out of force since March: from then on any day, not before.
  const ended = of(version("2026-03-01", { inForce: false }));
  expect(may(ended, floor.id, "2026-03-01")).toBe(true);
  expect(may(ended, floor.id, "2026-02-28")).toBe(false);
});

const counts = {
  ...{ population: 14, met: 8, notMet: 1, notRecorded: 1 },
  ...{ excluded: { "open-apex": 3 }, excepted: { allergy: 1 } },
};
const example: JudgedExample = {
  ...{ outcome: "excepted", reason: "allergy", practice: "NORTH", sessionId: "V-1", chair: "N1" },
  ...{ day: "2026-07-03", tooth: "26", canal: "MB1", seq: null },
};

test("a preview says what would have been, beside what is in force, with examples", () => {
  const view = previewView({
    ...{ unit: "canal", period: "July to September 2026", proposed: counts, own: {} },
    now: { ...counts, met: 9, notMet: 0 },
    examples: [example],
    addressOf: ({ sessionId }) => `/${sessionId}`,
  });
  expect(view.finding).toBe(
    "July to September 2026: it would have applied to 11 canals and been met in 8 of the 10 that are not excepted (80.0 %, 95 % interval 49.0 % to 94.3 %).",
  );
  expect(view.short).toBe("As edited: met 8 of 10 (80.0 %); in force: met 9 of 10 (90.0 %)");
  const row = (words: string) => view.rows.find((one) => one.words === words);
  expect(row("Eligible")).toMatchObject({ proposed: "11", now: "11" });
  expect(row("Met")).toMatchObject({ proposed: "8", now: "9" });
  expect(row("Left out: open apex")).toMatchObject({ proposed: "3", now: "3" });
  expect(row("Rate")).toMatchObject({ proposed: "80.0 %", now: "90.0 %" });
  expect(view.examples).toEqual([
    {
      ...{ outcome: "excepted", mark: "excepted" },
      items: [{ words: "NORTH, 3 Jul 2026, tooth 26, canal MB1: allergy", address: "/V-1" }],
    },
  ]);
});

test("nothing to count is said, and practices are added up by reason", () => {
  const none = { population: 0, met: 0, notMet: 0, notRecorded: 0, excluded: {}, excepted: {} };
  const view = previewView({
    ...{ unit: "visit", period: "2026", proposed: none, now: null, examples: [], own: {} },
    addressOf: () => null,
  });
  expect(
    previewView({
      ...{ unit: "visit", period: "2026", now: null, examples: [], own: {} },
      ...{ proposed: { ...none, population: 2, met: 1, notMet: 1 }, addressOf: () => null },
    }).finding,
  ).toMatch(/^2026: it would have applied to 2 visits and been met in 1 of them \(50/);
  expect(view.finding).toBe("2026: it would have applied to 0 visits.");
  expect(view.rows.find(({ words }) => words === "Rate")?.proposed).toBe("nothing to estimate");
  expect(addedUp([counts, { ...counts, excluded: { abandoned: 2 } }])).toEqual({
    ...{ population: 28, met: 16, notMet: 2, notRecorded: 2 },
    ...{ excluded: { abandoned: 2, "open-apex": 3 }, excepted: { allergy: 2 } },
  });
});
