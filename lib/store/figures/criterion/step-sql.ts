import { canalOf } from "./field-sql";
import type { Gathering } from "./gathering";

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
  const { unit, parameters } = gathering;
  const places = unit === "visit" ? ["''"] : [canalOf(unit), "''"];
  return places.map((canal) =>
    gathering.joined(
      `step ${step} ${canal}`,
      (s) =>
        `left join ${gathering.tables.steps} ${s} on ${s}.visit_id = v.id and ${s}.canal = ${canal} and ${s}.step = ${parameters.bind(step, "text")}`,
    ),
  );
}
