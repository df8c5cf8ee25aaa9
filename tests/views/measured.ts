import type { Measured } from "@/lib/measures/measured";
import { criterionMeasure } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";

/** A measure by its id, with the default criterion where it names one. */
export function measured(measure: string): Measured {
  const criterion = defaults.find((one) => criterionMeasure(one) === measure);
  return criterion ? { measure, criterion } : { measure };
}
