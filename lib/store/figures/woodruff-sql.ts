/**
 * SQL: Woodruff's interval of a median (1952, JASA 47:635), clusters honoured, in the pass that orders the values. The
 * share of values at or below the median, F, has the variance v = K/(K−1)·Σ(eᵢ − F·nᵢ)²/n² over K clusters, never below
 * F(1−F)/n; the ends are type-7 quantiles at ½ ± reach·√v, and absent outside (0, 1) or where F is 1. The design effect
 * is of v itself. The same as lib/statistics/clustered-median, which tests hold it to.
 *
 * From a relation with the columns of `keys`, `value` and `cluster`: `sorted`, its values in order with median and
 * quartiles, and `spread`, what the intervals' ends rest on.
 */
export function spreadAroundMedian(keys: string, from: string): string {
  return `sorted as materialized (
      select ${keys}, percentile_cont(array[0.25, 0.5, 0.75]) within group (order by value) as quartiles,
        array_agg(value order by value) as values
      from ${from} group by ${keys}
    ), around as (
      select ${keys}, cluster, count(*)::float8 as n, (count(*) filter (where value <= quartiles[2]))::float8 as e
      from ${from} join sorted using (${keys}) where cluster is not null group by ${keys}, cluster
    ), share_sums as (
      select ${keys}, count(*)::int as clusters, sum(n) as n, sum(e) / sum(n) as share,
        sum(e * e) as ee, sum(e * n) as en, sum(n * n) as nn
      from around group by ${keys}
    ), spread as (
      select ${keys}, clusters, n, share, case when clusters > 1 and share < 1 then
        greatest(0, clusters / (clusters - 1.0::float8) * (ee - 2 * share * en + share * share * nn) / (n * n)) end as variance
      from share_sums
    )`;
}

const span = "r.reach * sqrt(greatest(e.variance, e.share * (1 - e.share) / e.n))";

/**
 * SQL: quartiles, the values at the ranks `low` and `high`, and the clustered ends with their design effect, from
 * `sorted` as s, `spread` as e, and a relation r that holds the ranks and how many standard errors to `reach`.
 */
export const orderStatistics = `s.quartiles, s.values[r.low] as lower, s.values[r.high] as upper, e.clusters,
  ${quantileAt(`0.5 - ${span}`)} as "clusteredLower", ${quantileAt(`0.5 + ${span}`)} as "clusteredUpper",
  e.variance / (e.share * (1 - e.share) / e.n) as "designEffect"`;

/** SQL: the type-7 quantile of `s.values` at `p`; null outside (0, 1). */
function quantileAt(p: string): string {
  const place = `(cardinality(s.values) - 1) * (${p})`;
  const below = `s.values[1 + floor(${place})::int]`;
  const above = `s.values[least(cardinality(s.values), 2 + floor(${place})::int)]`;
  return `case when ${p} > 0 and ${p} < 1 then ${below} + (${place} - floor(${place})) * (${above} - ${below}) end`;
}
