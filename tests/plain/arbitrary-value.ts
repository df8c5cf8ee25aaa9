import * as fc from "fast-check";
import type { Values } from "@/lib/records/column";

/** A value that is not recorded now and then. */
export function maybe<T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> {
  return fc.option(arbitrary, { nil: undefined, freq: 2 });
}

/** A value that is rarely missing. */
export function often<T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> {
  return fc.option(arbitrary, { nil: undefined, freq: 7 });
}

/** A value that is mostly missing. */
export function rarely<T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> {
  return fc
    .tuple(fc.integer({ min: 0, max: 3 }), arbitrary)
    .map(([number, value]) => (number === 0 ? value : undefined));
}

/** Up to so many rows with a seq each, whose order need not be that of the rows. */
export function numbered(row: fc.Arbitrary<Values>, most: number): fc.Arbitrary<Values[]> {
  const one = fc.tuple(fc.integer({ min: 0, max: 9 }), row);
  return fc
    .uniqueArray(one, { maxLength: most, selector: ([seq]) => seq })
    .map((rows) => rows.map(([seq, values]) => ({ ...values, seq })));
}
