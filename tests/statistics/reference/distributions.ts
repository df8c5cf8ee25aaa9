import betaQuantile from "@stdlib/stats-base-dists-beta-quantile";
import chisquareQuantile from "@stdlib/stats-base-dists-chisquare-quantile";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import tQuantile from "@stdlib/stats-base-dists-t-quantile";
import { type Family, family } from "./family";

type One<Arguments extends string> = Record<Arguments | "p" | "value", number>;

/** The quantiles on which everything else rests. */
export const distributions: Family[] = [
  family("t-quantiles", (c: One<"df">) => [[tQuantile(c.p, c.df), c.value]]),
  family("beta-quantiles", (c: One<"a" | "b">) => [[betaQuantile(c.p, c.a, c.b), c.value]]),
  family("chi-squared-quantiles", (c: One<"df">) => [[chisquareQuantile(c.p, c.df), c.value]]),
  family("normal-quantiles", (c: One<"p">) => [[normalQuantile(c.p, 0, 1), c.value]]),
];
