import { withHome } from "@/lib/reports/with-home";
import { pool } from "@/lib/store/database";
import { unitSql } from "@/lib/store/figures/unit-sql";
import { scopeOf } from "@/lib/store/figures/scope";
import { holderReach } from "@/lib/access/reach";
import { quarter, monthsUpTo, rollingYear } from "@/lib/records/period";
const rates = ["separation-per-use","criterion/isolation","criterion/length-recorded","criterion/timer-reset","criterion/line-rinse"];
await withHome(async () => {
  const scope = scopeOf(holderReach().figures, ["group"]);
  for (const [name, periods] of [["q",[quarter(2026,3)]],["qy",[quarter(2026,3),rollingYear(quarter(2026,3))]],["m",monthsUpTo("2026-10-01",24)]] as const) {
  const within = scope.within;
  const variants: Record<string,string> = {
   cells: `with periods as (select * from unnest($1::int[], $2::date[], $3::date[]) as p(period, since, until)), units as (${unitSql(rates).replaceAll("{within}", within)}),
    cells as (select u.practice,u.chair,u.clinician,u.worker,u.measure,u.excluded,u.excepted,p.period, sum(units) units, sum(numerator) numerator, sum(denominator) denominator, sum(missing) missing, count(value) filter (where excluded is null) n
     from units u join periods p on u.local_day >= p.since and u.local_day < p.until where ($5::text is null or u.worker = $5) group by 1,2,3,4,5,6,7,8)
    select measure, period, kind, key, string_agg(distinct clinician, ', '), excluded, excepted, sum(units)::int from cells u
      cross join lateral (values ('group', ''), ('practice', u.practice), ('clinician', u.worker), ('chair', u.practice || '/' || u.chair)) s(kind, key) where s.kind = any($6::text[]) and s.key is not null group by 1,2,3,4,6,7`,
   days: `with periods as (select * from unnest($1::int[], $2::date[], $3::date[]) as p(period, since, until)), units as (${unitSql(rates).replaceAll("{within}", within)}),
    days as (select u.practice,u.chair,u.clinician,u.worker,u.measure,u.excluded,u.excepted,u.local_day, sum(units) units, sum(numerator) numerator, sum(denominator) denominator, sum(missing) missing, count(value) filter (where excluded is null) n
     from units u where ($5::text is null or u.worker = $5) group by 1,2,3,4,5,6,7,8)
    select measure, period, kind, key, string_agg(distinct clinician, ', '), excluded, excepted, sum(units)::int from days u join periods p on u.local_day >= p.since and u.local_day < p.until 
      cross join lateral (values ('group', ''), ('practice', u.practice), ('clinician', u.worker), ('chair', u.practice || '/' || u.chair)) s(kind, key) where s.kind = any($6::text[]) and s.key is not null group by 1,2,3,4,6,7`,
  };
  for (const [v, sql] of Object.entries(variants)) { const ts=[]; for (let i=0;i<5;i++){const t=performance.now(); await pool().query(sql, scope.parameters([...periods])); ts.push(Math.round(performance.now()-t));} console.log(name, v, ts.join(" "));
   if (process.argv[2]===v && process.argv[3]===name) console.log((await pool().query("explain analyze "+sql, scope.parameters([...periods]))).rows.map(r=>r["QUERY PLAN"]).join("\n")); }
  }
});
