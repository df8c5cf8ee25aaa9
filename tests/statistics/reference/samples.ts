import { hypergeometricInterval, sampleSize } from "@/lib/statistics/audit-sample";
import { ends, type Family, family } from "./family";

type Size = { population: number; p: number; margin: number; level: number; size: number };
type Drawn = {
  m: number;
  n: number;
  population: number;
  level: number;
  lower: number;
  upper: number;
};

/** Samples for an audit by hand. */
export const samples: Family[] = [
  family("sample-size", (c: Size) => [[sampleSize(c.population, c.p, c.margin, c.level), c.size]]),
  family("hypergeometric", (c: Drawn) =>
    ends(hypergeometricInterval(c.m, c.n, c.population, c.level), c),
  ),
];
