import type * as r4 from "fhir/r4";
import type { Measured } from "@/lib/measures/measured";
import { criterionAsMeasure } from "./criterion-as-measure";
import { otherAsMeasure } from "./other-as-measure";

/** The measure that a figure reports: of a criterion, in the wording that the figure was judged by. */
export function measureOfFigure({ measure, criterion }: Measured): r4.Measure {
  return criterion ? criterionAsMeasure(criterion) : otherAsMeasure(measure);
}
