import { pool } from "../database";
import { noClusterSums } from "./cluster-sums-sql";
import type { Asked, CountRow } from "./counted";
import type { Scope } from "./scope";

/**
 * Counts of physical instruments. An instrument belongs to every subject that used it, so it is counted after the
 * subjects are told apart: once for the group, once for each clinician who used it.
 */
export async function instrumentCounts(scope: Scope, asked: Asked): Promise<CountRow[]> {
  const uses = `
    select f.practice, f.chair, f.clinician, f.worker, f.local_day, i.instrument_id, i.separated, false as shared
    from (select * from canal_facts where {place} and {whose}) f join instruments i on i.visit_id = f.visit_id and i.canal = f.canal
    where i.instrument_id is not null`;
  const { rows } = await pool().query<CountRow>(
    `${scope.withUnits(uses)}, instruments_of as (
      select period, kind, key, practice, instrument_id, min(chair) as chair, string_agg(distinct clinician, ', ') as clinicians,
        coalesce(bool_or(separated > 0), false) as event, bool_and(separated is not null) as known
      from subjects group by period, kind, key, practice, instrument_id
    )
    select 'separation-per-instrument' as measure, period, kind, key,
      case when min(practice) = max(practice) then min(practice) end as practice,
      case kind when 'clinician' then string_agg(distinct clinicians, ', ') when 'chair' then min(chair) when 'practice' then min(practice) end as code,
      null::text as excluded, null::text as excepted, count(*)::int as units, (count(*) filter (where event))::int as numerator,
      (count(*) filter (where event or known))::int as denominator, (count(*) filter (where not event and not known))::int as missing, 0 as n,
      ${noClusterSums}
    from instruments_of group by period, kind, key order by period, kind, practice, code`,
    scope.parameters(asked.periods),
  );
  return rows;
}
