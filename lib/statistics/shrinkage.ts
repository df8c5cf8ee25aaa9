import { bisect } from "@/lib/statistics/bisection";
import { requireEventsAmong } from "@/lib/statistics/count-and-level";

/**
 * A beta-binomial fit: rates spread around `mu` like a beta distribution with α = mu/theta and β = (1 − mu)/theta, so that
 * theta = 1/(α + β) is 0 where they do not vary beyond chance.
 */
export type BetaBinomialFit = { mu: number; theta: number; logLikelihood: number };

/**
 * The maximum likelihood fit of a beta-binomial to counts, in the product form of the likelihood (Griffiths 1973,
 * Biometrics 29:637), which stays exact towards no extra variation: at that edge theta is 0 and mu the pooled rate.
 * @param units events and units of each, in any order; one without units tells nothing
 * @returns undefined where none has units
 * @throws RangeError for counts that cannot be
 */
export function betaBinomialFit(
  units: readonly { readonly events: number; readonly units: number }[],
): BetaBinomialFit | undefined {
  for (const one of units) requireEventsAmong(one.events, one.units);
  const events = units.reduce((sum, one) => sum + one.events, 0);
  const all = units.reduce((sum, one) => sum + one.units, 0);
  if (all === 0) return undefined;
  const likelihood = likelihoodOf(units);
  const pooled = events / all;
  const none = { mu: pooled, theta: 0, logLikelihood: likelihood.at(pooled, 0) };
  if (likelihood.slope(pooled, 0) <= 0) return none;
  // The likelihood of the best mu for each theta rises from 0, so it turns where its slope does. Sought by the correlation
  // within units, theta/(1 + theta), which runs from 0 to 1; where every unit is all or nothing it is all but 1.
  const theta = spread(
    bisect((alike) => likelihood.slope(bestMu(likelihood, spread(alike)), spread(alike)) < 0, 0, 1),
  );
  const mu = bestMu(likelihood, theta);
  return { mu, theta, logLikelihood: likelihood.at(mu, theta) };
}

/** A rate drawn towards `fit.mu`: (x + mu/theta)/(n + 1/theta); mu itself where there is no extra variation. */
export function shrunkenRate(
  x: number,
  n: number,
  fit: Pick<BetaBinomialFit, "mu" | "theta">,
): number {
  requireEventsAmong(x, n);
  // Times theta, so that no extra variation needs no division by 0.
  return (x * fit.theta + fit.mu) / (n * fit.theta + 1);
}

/**
 * The share of the variance between units of size n that is no chance: n/(n + 1/theta), from 0 to 1; 0 where there is no
 * extra variation.
 */
export function reliability(n: number, fit: Pick<BetaBinomialFit, "theta">): number {
  requireEventsAmong(0, n);
  return (n * fit.theta) / (n * fit.theta + 1);
}

/** The log-likelihood, and its slopes. */
type Likelihood = {
  at(mu: number, theta: number): number;
  /** by theta */
  slope(mu: number, theta: number): number;
  /** by mu; falls as mu rises */
  tilt(mu: number, theta: number): number;
};

/**
 * Σ over units of Σ_{j<x} ln(mu + jθ) + Σ_{j<n−x} ln(1 − mu + jθ) − Σ_{j<n} ln(1 + jθ), gathered by j: how many units
 * have over j events, over j units without, and over j units.
 */
function likelihoodOf(units: readonly { events: number; units: number }[]): Likelihood {
  const events = longerThan(units.map((one) => one.events));
  const others = longerThan(units.map((one) => one.units - one.events));
  const all = longerThan(units.map((one) => one.units));
  const sum = (counts: readonly number[], term: (j: number) => number) =>
    counts.reduce((total, count, j) => total + count * term(j), 0);
  return {
    at: (mu, theta) =>
      sum(events, (j) => Math.log(mu + j * theta)) +
      sum(others, (j) => Math.log(1 - mu + j * theta)) -
      sum(all, (j) => Math.log1p(j * theta)),
    slope: (mu, theta) =>
      sum(events, (j) => j / (mu + j * theta)) +
      sum(others, (j) => j / (1 - mu + j * theta)) -
      sum(all, (j) => j / (1 + j * theta)),
    tilt: (mu, theta) =>
      sum(events, (j) => 1 / (mu + j * theta)) - sum(others, (j) => 1 / (1 - mu + j * theta)),
  };
}

/** Theta from the correlation within units; finite where that is 1. */
function spread(alike: number): number {
  return Math.min(alike / (1 - alike), Number.MAX_SAFE_INTEGER);
}

/** How many of the lengths are over 0, over 1, … */
function longerThan(lengths: readonly number[]): number[] {
  const most = Math.max(0, ...lengths);
  const counts = new Array<number>(most).fill(0);
  for (const length of lengths)
    if (length >= 1) counts[length - 1] = (counts[length - 1] as number) + 1;
  for (let j = most - 2; j >= 0; j -= 1)
    counts[j] = (counts[j] as number) + (counts[j + 1] as number);
  return counts;
}

function bestMu(likelihood: Likelihood, theta: number): number {
  return bisect((mu) => likelihood.tilt(mu, theta) < 0, 0, 1);
}
