import type { Gathering } from "./gathering";
import { knownVolume, largestFirst } from "./main-irrigant-sql";

/** SQL: of a canal that is a unit itself, with those of all others asked for. */
export function mainIrrigantOfUnit(gathering: Gathering): string {
  gathering.looksAt("deliveries");
  const m = gathering.joined(
    "main irrigant",
    (alias) => `left join (
          select distinct on (m.visit_id, m.canal) m.visit_id, m.canal, m.irrigant from (
            select i.visit_id, i.canal, i.irrigant, ${knownVolume("u.timer_reset")} as ml
            from asked u join deliveries i on i.visit_id = u.visit_id and i.canal = u.canal group by i.visit_id, i.canal, i.irrigant
          ) m where m.ml > 0 order by m.visit_id, m.canal, ${largestFirst}
        ) ${alias} on ${alias}.visit_id = u.visit_id and ${alias}.canal = u.canal`,
  );
  return `${m}.irrigant`;
}
