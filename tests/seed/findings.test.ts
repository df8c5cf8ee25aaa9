import { describe, expect, it } from "vitest";
import { quantile } from "@/lib/statistics/quantile";
import { weekday } from "@/seed/calendar";
import { makePractice } from "@/seed/make-practice";
import type { Row, Rows } from "@/seed/rows";
import { findings, type PracticeCode, practices, span } from "@/seed/scenario";

// Every bound below is the scenario's own intention (seed/scenario.ts); the numbers are computed from its rows.
const medlar = rowsOf("MEDLAR");
const quince = rowsOf("QUINCE");
const spindle = rowsOf("SPINDLE");

describe("the changed pump", () => {
  const { chair, from, clinician } = findings.pumpChange;
  const volume = (
    at: string,
    by: string | undefined,
    after: boolean,
    of: "volume_ml" | "duration_s",
  ) =>
    median(
      continuous(
        medlar,
        (visit) =>
          visit.chair === at &&
          (by === undefined || visit.clinician === by) &&
          isAfter(visit, from) === after,
      ).map((row) => row[of]),
    );

  it("lowers the volume at its chair by a third or more, for everyone who works there", () => {
    for (const by of [clinician, "M-06"]) {
      expect(
        volume(chair, by, true, "volume_ml") / volume(chair, by, false, "volume_ml"),
      ).toBeLessThan(0.7);
    }
  });

  it("leaves the times there, and the same clinician's volume at another chair, as they were", () => {
    expect(
      volume(chair, clinician, true, "duration_s") / volume(chair, clinician, false, "duration_s"),
    ).toBeCloseTo(1, 1);
    expect(
      volume("MEDLAR-4", clinician, true, "volume_ml") /
        volume("MEDLAR-4", clinician, false, "volume_ml"),
    ).toBeGreaterThan(0.85);
  });
});

describe("the lot that separates", () => {
  const { lot, from } = findings.weakLot;

  it("does so more than twice as often as the rotary instruments before it, and nothing else there rose so", () => {
    const before = separations(
      spindle,
      (use, visit) => use.kind === "rotary" && !isAfter(visit, from),
    );
    const since = separations(spindle, (use) => use.lot === lot);
    const others = separations(
      spindle,
      (use, visit) => use.kind === "reciprocating" && isAfter(visit, from),
    );
    expect(since.events).toBeGreaterThanOrEqual(8);
    expect(since.rate / before.rate).toBeGreaterThan(2);
    expect(since.rate / others.rate).toBeGreaterThan(2);
  });

  it("leaves the group near one separation in a hundred canals", () => {
    const parts = [medlar, quince, spindle].map((rows) => separations(rows, () => true));
    const rate = sum(parts.map(({ events }) => events)) / sum(parts.map(({ canals }) => canals));
    expect(rate).toBeGreaterThan(0.007);
    expect(rate).toBeLessThan(0.014);
  });
});

describe("the silent Fridays", () => {
  const { chair, from } = findings.silentFridays;
  const fridays = (at: string, after: boolean) =>
    quince.upkeep.filter(
      (row) =>
        row.chair === at &&
        row.task === "line-rinse" &&
        weekday(String(row.day)) === 4 &&
        String(row.day) >= from === after,
    ).length;

  it("have no line rinse at the chair, while work goes on there and others are rinsed", () => {
    expect(fridays(chair, true)).toBe(0);
    expect(fridays(chair, false)).toBeGreaterThan(40);
    expect(fridays("QUINCE-1", true)).toBeGreaterThan(30);
    const worked = continuous(
      quince,
      (visit) => visit.chair === chair && isAfter(visit, from) && weekday(dayOf(visit)) === 4,
    );
    expect(worked.length).toBeGreaterThan(40);
  });
});

describe("the cast", () => {
  it("differs believably: medians of irrigation time per clinician spread, none is out of this world", () => {
    const codes = [...new Set(medlar.sessions.map((visit) => visit.clinician))];
    const medians = codes.map((code) =>
      median(continuous(medlar, (visit) => visit.clinician === code).map((row) => row.duration_s)),
    );
    expect(Math.max(...medians) / Math.min(...medians)).toBeGreaterThan(1.3);
    expect(Math.min(...medians)).toBeGreaterThan(100);
    expect(Math.max(...medians)).toBeLessThan(400);
  });

  it("has a person in two practices, a code with two persons in turn and a supervised trainee", () => {
    const people = [...medlar.people, ...quince.people, ...spindle.people];
    expect(people.filter((row) => row.person === "HG-06").map((row) => row.practice)).toEqual([
      "MEDLAR",
      "QUINCE",
    ]);
    const passed = people.filter((row) => row.code === "Q-14");
    expect(passed.map(({ from, to }) => [from, to])).toEqual([
      ["2024-10-01", "2025-12-31"],
      ["2026-01-01", undefined],
    ]);
    const trainee = medlar.sessions.filter((visit) => visit.clinician === "M-05");
    expect(trainee.length).toBeGreaterThan(50);
    expect(new Set(trainee.map((visit) => visit.supervisor))).toEqual(new Set(["M-01"]));
  });
});

function rowsOf(code: PracticeCode): Rows {
  const practice = practices.find((one) => one.code === code);
  if (!practice) throw new Error(code);
  return makePractice(practice, span.last);
}

function visitsOf(rows: Rows): Map<Row[string], Row> {
  return new Map(rows.sessions.map((row) => [row.session_id, row]));
}

function continuous(rows: Rows, which: (visit: Row) => boolean): Row[] {
  const visits = visitsOf(rows);
  return rows.irrigation.filter((row) => {
    const visit = visits.get(row.session_id);
    return row.delivery === "continuous" && visit !== undefined && which(visit);
  });
}

function separations(rows: Rows, which: (use: Row, visit: Row) => boolean) {
  const visits = visitsOf(rows);
  const uses = rows.instruments.filter((use) => which(use, visits.get(use.session_id) ?? {}));
  const canals = new Set(uses.map(({ session_id, canal }) => `${session_id} ${canal}`)).size;
  const events = uses.filter((use) => use.separated === "yes").length;
  return { canals, events, rate: events / canals };
}

function dayOf(visit: Row): string {
  return String(visit.started_at).slice(0, 10);
}

function isAfter(visit: Row, day: string): boolean {
  return dayOf(visit) >= day;
}

function median(cells: readonly Row[string][]): number {
  const numbers = cells.filter((cell) => typeof cell === "number");
  expect(numbers.length).toBeGreaterThan(20);
  return quantile(numbers, 0.5) ?? Number.NaN;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
