import * as fc from "fast-check";
import { expect, test } from "vitest";
import { arbitraryRecords } from "./arbitrary";
import { courseOf } from "./criteria/course";
import { criterionUnits } from "./criteria/criteria";
import type { Records } from "./records";
import { anyHeld, visitsOf } from "./visit";

// A property: no expected values; agreement on random records says little unless they reach the awkward cases.
test("random records reach the awkward cases of the criteria", () => {
  const seen = new Set<string>();
  for (const records of fc.sample(arbitraryRecords, { numRuns: 300, seed: 7 })) {
    for (const one of [...ofCourses(records), ...ofDeliveries(records), ...ofSeparations(records)])
      seen.add(one);
  }
  expect([...seen].sort()).toEqual([
    "a course beyond 180 days by its case",
    "a course of 180 days",
    "a course shared between clinicians, met",
    "a course shared between clinicians, not met",
    "a filled canal of two visits",
    "a held delivery of a canal",
    "a separation with follow-ups",
    "a visit with every delivery timed",
    "a whole-tooth note beside a canal's delivery",
    "several devices at a chair",
    "two canals timed alike",
  ]);
});

function ofCourses(records: Records): string[] {
  const visits = visitsOf(records);
  const seen = visits.flatMap((last) =>
    last.canals.flatMap(({ row }) => {
      const course = courseOf(visits, last, row.canal);
      const days = course.map(
        ({ visit }) => (Date.parse(last.day) - Date.parse(visit.day)) / 86_400_000,
      );
      return [
        ...(course.length > 1 && row.filled ? ["a filled canal of two visits"] : []),
        ...(days.includes(180) ? ["a course of 180 days"] : []),
        ...(days.some((one) => one > 180) ? ["a course beyond 180 days by its case"] : []),
      ];
    }),
  );
  const shared = (criterionUnits(records, "hypochlorite-floor") ?? []).flatMap(
    ({ state, also = [] }) =>
      "yes" in state && also.length > 0
        ? [`a course shared between clinicians, ${state.yes ? "met" : "not met"}`]
        : [],
  );
  return [...seen, ...shared];
}

function ofDeliveries(records: Records): string[] {
  return visitsOf(records).flatMap(({ deliveries, canals }) => {
    const noted = deliveries.filter(({ canal }) => canal === undefined).length;
    const timed = deliveries.filter((row) => row.started_at !== undefined);
    const all = deliveries.length > 1 && timed.length === deliveries.length;
    const alike = timed.some((one) =>
      timed.some((other) => other.started_at === one.started_at && other.canal !== one.canal),
    );
    const held = canals.some((one) => anyHeld(one.held, "irrigation"));
    return [
      ...(noted > 0 && noted < deliveries.length
        ? ["a whole-tooth note beside a canal's delivery"]
        : []),
      ...(all ? ["a visit with every delivery timed"] : []),
      ...(all && alike ? ["two canals timed alike"] : []),
      ...(held ? ["a held delivery of a canal"] : []),
    ];
  });
}

function ofSeparations({ instruments, followups, upkeep }: Records): string[] {
  const followed = followups.some((row) =>
    instruments.some(
      (use) =>
        use.session_id === row.session_id &&
        use.canal === row.canal &&
        use.seq === row.seq &&
        Number(use.separated) > 0,
    ),
  );
  const chairs = upkeep.map(({ practice, chair, day, task }) =>
    [practice, chair, day, task].join(" "),
  );
  return [
    ...(followed ? ["a separation with follow-ups"] : []),
    ...(new Set(chairs).size < chairs.length ? ["several devices at a chair"] : []),
  ];
}
