import * as fc from "fast-check";
import type { Values } from "@/lib/records/column";
import { dayAfter } from "@/lib/records/period";
import { maybe } from "./arbitrary-value";
import { clinicians } from "./arbitrary-visit";

const persons = ["ann", "ben", "cleo"] as const;

/** Days on which a code changes hands, some of them the last of a quarter. */
const handOver = fc.constantFrom(
  "2024-03-30",
  "2024-06-29",
  "2024-06-30",
  "2024-07-01",
  "2024-09-30",
  "2024-10-26",
);

/** Who the codes of the practices are: nobody known, one person, or two of whom one follows the other. */
export function people(practices: readonly string[]): fc.Arbitrary<Values[]> {
  const codes = practices.flatMap((practice) => clinicians.map((code) => ({ practice, code })));
  const spells = codes.map((of) =>
    fc
      .record({
        first: fc.constantFrom(...persons),
        second: fc.constantFrom(...persons),
        to: maybe(handOver),
        gap: fc.integer({ min: -1, max: 2 }),
        know: fc.boolean(),
        passes: fc.boolean(),
      })
      .map(({ first, second, to, gap, know, passes }): Values[] => {
        if (!know) return [];
        const one = { ...of, person: first, from: "2024-01-01", to };
        // A gap of −1 overlaps by two days; 0 by one, 1 follows at once, 2 leaves a day that is nobody's.
        return to && passes
          ? [one, { ...of, person: second, from: dayAfter(to, gap), to: undefined }]
          : [one];
      }),
  );
  return fc.tuple(...spells).map((rows) => rows.flat());
}

export type ChairDay = { readonly practice: string; readonly chair: string; readonly day: string };

/** Upkeep of chairs on days: of some no row, else of the chair as a whole, of its devices, or of both. */
export function upkeep(chairDays: readonly ChairDay[]): fc.Arbitrary<Values[]> {
  const task = fc.record({
    device: maybe(fc.constantFrom("M1", "M2")),
    task: fc.constantFrom("line-rinse", "line-rinse", "line-rinse", "line-dry", "line-dry"),
    status: fc.constantFrom("done", "done", "done", "not-done", "out-of-service"),
    duration_s: maybe(fc.constantFrom(0, 29, 30, 45)),
  });
  const tasks = fc.uniqueArray(task, {
    maxLength: 4,
    selector: (row) => `${row.device} ${row.task}`,
  });
  return fc
    .tuple(
      ...chairDays.map((of) => tasks.map((rows) => rows.map((row): Values => ({ ...of, ...row })))),
    )
    .map((rows) => rows.flat());
}
