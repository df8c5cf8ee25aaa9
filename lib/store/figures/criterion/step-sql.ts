import { canalOf } from "./field-sql";
import type { Gathering } from "./gathering";
import { records } from "./tables";

/** SQL: the status of a step, the canal's own before the visit's. */
export function stepStatus(step: string, gathering: Gathering): string {
  return `coalesce(${rowsOf(step, gathering)
    .map((row) => `${row}.status`)
    .join(", ")})`;
}

/** SQL: the coded reason of a step whose status is excepted. */
export function stepReason(step: string, gathering: Gathering): string {
  const reasons = rowsOf(step, gathering).map(
    (row) =>
      `when ${row}.status = 'excepted' then ${row}.reason when ${row}.status is not null then null`,
  );
  return `case ${reasons.join(" ")} end`;
}

/** The rows that say something of a step, the canal's own first; a row has a status. */
function rowsOf(step: string, gathering: Gathering): string[] {
  const { unit, parameters, tables } = gathering;
  const places = unit === "visit" ? ["''"] : [canalOf(unit), "''"];
  const name = parameters.bind(step, "text");
  // Few rows are joined; of many each unit looks up its own.
  if (tables === records)
    return [
      gathering.joined(
        `step ${step}`,
        (s) => `left join lateral (
          select s.status, s.reason from steps s where s.visit_id = v.id and s.step = ${name} and s.canal in (${places.join(", ")}) order by s.canal desc limit 1
        ) ${s} on true`,
      ),
    ];
  return places.map((canal) =>
    gathering.joined(
      `step ${step} ${canal}`,
      (s) =>
        `left join ${tables.steps} ${s} on ${s}.visit_id = v.id and ${s}.canal = ${canal} and ${s}.step = ${name}`,
    ),
  );
}
