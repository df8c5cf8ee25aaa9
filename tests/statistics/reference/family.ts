import { readFileSync } from "node:fs";
import { projectFolder } from "@/lib/store/home/project-folder";

/** A number found beside the one expected; null and undefined both mean that there is none. */
export type Pair = [found: number | null | undefined, expected: number | null | undefined];

/** How a family of methods is held against reference values computed elsewhere. */
export type Family = { file: string; pairs: (record: never) => Pair[] };

/** A family: its file under tests/data/reference, and what to compare in each of its records. */
export function family<R>(file: string, pairs: (record: R) => Pair[]): Family {
  return { file, pairs };
}

/** What a comparison found; the disagreements are the largest, absolute and relative. */
export type Agreement = {
  reference: string;
  cases: number;
  pairs: number;
  absolute: number;
  relative: number;
  /** over 1e-9, where the value is over 1 relative to it; or only one of the two is there */
  faults: string[];
};

const TOLERANCE = 1e-9;

/** Compares every record of a family. */
export function compare({ file, pairs }: Family): Agreement {
  const { reference, cases } = read(file);
  const sum: Agreement = {
    reference,
    cases: cases.length,
    pairs: 0,
    absolute: 0,
    relative: 0,
    faults: [],
  };
  for (const record of cases) {
    for (const [found, expected] of pairs(record)) {
      sum.pairs += 1;
      const distance = distanceOf(found ?? null, expected ?? null);
      if (distance > 0) {
        sum.absolute = Math.max(sum.absolute, distance);
        sum.relative = Math.max(sum.relative, distance / Math.abs(expected || 1));
      }
      if (!(distance <= TOLERANCE * Math.max(1, Math.abs(expected ?? 0)))) {
        sum.faults.push(`${found} for ${expected}: ${JSON.stringify(record).slice(0, 300)}`);
      }
    }
  }
  return sum;
}

/** Compares two lists place by place; lists of different length have a fault for their lengths. */
export function eachOf(
  found: readonly (number | null | undefined)[],
  expected: readonly (number | null)[],
): Pair[] {
  return [
    [found.length, expected.length],
    ...expected.map((value, place): Pair => [found[place], value]),
  ];
}

/** The two ends of an interval, or that there is none. */
export function ends(
  found: { lower: number; upper: number } | undefined,
  expected: { lower: number | null; upper: number | null },
): Pair[] {
  return [
    [found?.lower, expected.lower],
    [found?.upper, expected.upper],
  ];
}

function distanceOf(found: number | null, expected: number | null): number {
  if (found === null || expected === null) return found === expected ? 0 : Number.POSITIVE_INFINITY;
  return Math.abs(found - expected);
}

// The records were written by the script beside them; their shape is the family's to know.
function read(file: string): { reference: string; cases: never[] } {
  return JSON.parse(readFileSync(`${projectFolder}/tests/data/reference/${file}.json`, "utf8"));
}
