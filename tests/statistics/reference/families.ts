import { clusters } from "./clusters";
import { comparisons } from "./comparisons";
import { distributions } from "./distributions";
import type { Family } from "./family";
import { intervals } from "./intervals";
import { overTime } from "./over-time";
import { samples } from "./samples";

/** Every family for which R, SciPy or statsmodels gave values. */
export const families: Family[] = [
  ...intervals,
  ...clusters,
  ...comparisons,
  ...overTime,
  ...samples,
  ...distributions,
];
