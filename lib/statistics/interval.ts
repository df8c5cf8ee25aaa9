/** How an interval was made; a new method adds its name here, so that words for it cannot be forgotten. */
export type IntervalMethod =
  | "wilson"
  | "clopper-pearson"
  | "mid-p"
  | "jeffreys"
  | "newcombe"
  | "miettinen-nurminen"
  | "median-order-statistics"
  | "woodruff"
  | "median-difference"
  | "clustered-wilson"
  | "clustered-clopper-pearson"
  | "poisson-exact"
  | "poisson-mid-p";

/** The two ends of something, in the unit of the quantity itself (a proportion runs from 0 to 1). */
export type Ends = { lower: number; upper: number };

/**
 * A two-sided confidence interval. `level` is the level asked for, such as 0.95.
 * An interval that does not exist is `undefined`, never one without width.
 */
export type Interval = Ends & { level: number; method: IntervalMethod };
