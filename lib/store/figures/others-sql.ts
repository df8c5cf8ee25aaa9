import type { Period } from "@/lib/records/period";
import type { Pair } from "./compared-with";
import { fillIn } from "./criterion/fill-in";
import type { Judging } from "./criterion/units-sql";
import { daysOf } from "./scope";
import { unitSql } from "./unit-sql";

/**
 * SQL: `compared`, the pairs, and `beside`, what each other clinician did at each practice in each period, patient by
 * patient. The cells are fewer than the units and carry their values, so that no join runs over the units themselves.
 */
export function beside(measures: readonly string[], judging?: Judging): string {
  // The days stand as parameters of their own, so that PostgreSQL plans with them.
  const place = "local_day >= $9::date and local_day < $10::date and practice = any($8::text[])";
  return `
    with periods as (
      select * from unnest($1::int[], $2::date[], $3::date[]) as p(period, since, until)
    ), compared as (
      select * from unnest($4::text[], $5::int[], $6::text[], $7::text[]) as c(worker, period, practice, other)
    ), units as (${fillIn(unitSql(measures, judging ? { judging } : {}), { place, whose: "true" })})
    , cells as materialized (
      select u.measure, p.period, u.practice, u.worker as other, u.cluster, sum(coalesce(u.denominator, 1)) as units,
        sum(u.numerator) as numerator, array_agg(u.value) as values
      from units u join periods p on u.local_day >= p.since and u.local_day < p.until
      where u.excluded is null and u.excepted is null and u.worker is not null and (u.value is not null or u.denominator > 0)
      group by u.measure, p.period, u.practice, u.worker, u.cluster
    ), beside as (
      select c.worker, c.period, u.measure, c.other, u.cluster, u.units, u.numerator, u.values
      from compared c join cells u using (period, practice, other)
    )`;
}

/** The first ten parameters of a query over `beside`. */
export function parameters(periods: readonly Period[], pairs: readonly Pair[]): unknown[] {
  return [
    periods.map((_, place) => place),
    periods.map((period) => period.from),
    periods.map((period) => period.until),
    pairs.map((pair) => pair.worker),
    pairs.map((pair) => pair.period),
    pairs.map((pair) => pair.practice),
    pairs.map((pair) => pair.other),
    [...new Set(pairs.map((pair) => pair.practice))],
    ...daysOf(periods),
  ];
}
