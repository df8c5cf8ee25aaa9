import { volume } from "./delivery-sql";
import type { Gathering } from "./gathering";

// The irrigant of the largest known volume. Sums are compared to a millionth, so that the order in which they are added makes no difference.

const largestFirst = `m.ml desc, m.irrigant <> 'naocl', m.irrigant collate "C"`;
const sum = (timerReset: string) => `round(sum(${volume(timerReset)})::numeric, 6)`;

/** SQL: of a canal `c`, looked up by itself. */
export function mainIrrigant(c: string): string {
  return `(select m.irrigant from (
      select i.irrigant, ${sum(`${c}.timer_reset`)} as ml
      from irrigation i where i.visit_id = ${c}.visit_id and i.canal = ${c}.canal group by i.irrigant
    ) m where m.ml > 0 order by ${largestFirst} limit 1)`;
}

/** SQL: of a canal that is a unit itself, with those of all others asked for. */
export function mainIrrigantOfUnit(gathering: Gathering): string {
  gathering.looksAt("deliveries");
  const m = gathering.joined(
    "main irrigant",
    (alias) => `left join (
          select distinct on (m.visit_id, m.canal) m.visit_id, m.canal, m.irrigant from (
            select i.visit_id, i.canal, i.irrigant, ${sum("u.timer_reset")} as ml
            from asked u join deliveries i on i.visit_id = u.visit_id and i.canal = u.canal group by i.visit_id, i.canal, i.irrigant
          ) m where m.ml > 0 order by m.visit_id, m.canal, ${largestFirst}
        ) ${alias} on ${alias}.visit_id = u.visit_id and ${alias}.canal = u.canal`,
  );
  return `${m}.irrigant`;
}
