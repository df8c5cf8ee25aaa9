import { volume } from "./delivery-sql";

// The irrigant of the largest known volume. Sums are compared to a millionth, so that the order in which they are added makes no difference.

/** SQL: the order of the irrigants `m` of a canal. */
export const largestFirst = `m.ml desc, m.irrigant <> 'naocl', m.irrigant collate "C"`;
/** SQL: the known volume of deliveries `i`. */
export const knownVolume = (timerReset: string) => `round(sum(${volume(timerReset)})::numeric, 6)`;

/** SQL: of a canal `c`, looked up by itself. */
export function mainIrrigant(c: string): string {
  return `(select m.irrigant from (
      select i.irrigant, ${knownVolume(`${c}.timer_reset`)} as ml
      from irrigation i where i.visit_id = ${c}.visit_id and i.canal = ${c}.canal group by i.irrigant
    ) m where m.ml > 0 order by ${largestFirst} limit 1)`;
}
