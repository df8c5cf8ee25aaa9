import * as fc from "fast-check";
import type { Values } from "@/lib/records/column";
import { deliveries } from "./arbitrary-delivery";
import { type UseDraft, uses } from "./arbitrary-use";
import { maybe, often, rarely } from "./arbitrary-value";

/** Rows of one canal that do not say yet to which visit they belong. */
export type CanalDraft = {
  readonly row: Values;
  readonly deliveries: Values[];
  readonly uses: UseDraft[];
};

export const canalNamesDrawn = ["MB1", "MB2", "main", "unknown-1"] as const;

/** A canal with its deliveries and uses; `clinicians` are the codes that may have worked on it. */
export function canalDraft(clinicians: readonly string[]): fc.Arbitrary<CanalDraft> {
  return fc.record({
    row: fc.record({
      canal: fc.constantFrom("MB1", ...canalNamesDrawn),
      clinician: fc.option(fc.constantFrom(...clinicians), { nil: undefined, freq: 1 }),
      working_length_mm: maybe(fc.constantFrom(19, 20.5)),
      length_method: maybe(fc.constantFrom("locator", "radiograph", "both", "estimate")),
      apex: rarely(fc.constantFrom("open", "closed")),
      preparation: fc.constantFrom("rotary", "oscillating", "reciprocating", "hand", "none"),
      timer_reset: maybe(fc.constantFrom("yes", "no", "no", "no-timer")),
      filled: often(fc.constantFrom(true, true, false)),
      fragment_on_arrival: maybe(fc.boolean()),
    }),
    deliveries: deliveries(4),
    uses: uses(3),
  });
}
