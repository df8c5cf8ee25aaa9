import type { Condition } from "@/lib/protocol/condition";
import type { Criterion } from "@/lib/protocol/criterion";

/** The fields of each unit as SQL over the source in `unitsOf`; a field that is not here is a mistake in a criterion. */
const fields: Record<Criterion["unit"], Record<string, string>> = {
  canal: {
    exclusion: "u.exclusion",
    timer_reset: "u.timer_reset",
    working_length_mm: "u.working_length_mm",
    length_method: "u.length_method",
    exception: "coalesce(own.reason, whole.reason)",
  },
  visit: {
    outcome: "u.outcome",
    dam: "dam.status",
    exception: "coalesce(case when dam.status = 'excepted' then dam.reason end, whole.reason)",
  },
  "chair-day": { status: "u.status", duration_s: "u.duration_s" },
};

/** A query giving each unit of the criterion with its outcome and the fields it rests on; the order is that of lib/protocol/outcome. */
export function criterionUnits(criterion: Criterion): string {
  const sql = (condition: Condition) => compiled(condition, criterion.unit);
  const exclusions = criterion.exclusions.map(
    (one) => `when ${sql(one.when)} then ${text(one.reason)}`,
  );
  const population = criterion.treatmentPopulation
    ? "when u.exclusion is not null then u.exclusion"
    : "";
  const cases = [population, ...exclusions].filter(Boolean).join(" ");
  const excluded = cases ? `case ${cases} end` : "null";
  const reason =
    criterion.exception === null ? "null" : fieldOf(criterion.unit, criterion.exception);
  return `
    select practice, chair, clinician, worker, patient, local_day, visit_id, canal, excluded,
      case when excluded is null and not met then reason end as excepted,
      (excluded is null and met) as met,
      (excluded is null and not met and reason is null and not evident) as missing, fields
    from (
      select u.practice, u.chair, u.clinician, u.worker, u.patient, u.local_day, u.visit_id, u.canal,
        ${excluded} as excluded, ${sql(criterion.met)} as met, ${sql(criterion.evidence)} as evident, ${reason} as reason,
        ${fieldsObject(criterion.unit)} as fields
      from ${unitsOf(criterion)}
    ) judged`;
}

function unitsOf(criterion: Criterion): string {
  const exceptions = (name: string, canal: string) =>
    `left join exceptions ${name} on ${name}.visit_id = u.visit_id and ${name}.canal = ${canal} and ${name}.criterion = ${text(criterion.id)}`;
  if (criterion.unit === "canal") {
    return `(select * from canal_facts where {within}) u ${exceptions("own", "u.canal")} ${exceptions("whole", "''")}`;
  }
  if (criterion.unit === "visit") {
    return `(select *, '' as canal from visit_facts where {within}) u
      left join steps dam on dam.visit_id = u.visit_id and dam.canal = '' and dam.step = 'dam'
      ${exceptions("whole", "''")}`;
  }
  return chairDays(criterion.id);
}

/**
 * Chair-days with a continuous delivery, and what became of the task. Where a chair has several devices each must
 * pass: one that was not done outweighs one not recorded, and that one that was done; a device out of service is left out.
 */
export function chairDays(task: string): string {
  return `(
    select d.practice, d.chair, null::text as clinician, null::text as worker, null::text as patient, d.local_day, null::bigint as visit_id, null::text as canal,
      case when count(k.id) = 0 then null
           when bool_and(k.status = 'out-of-service') then 'out-of-service'
           when bool_or(k.status = 'not-done') then 'not-done' else 'done' end as status,
      case when bool_and(k.status <> 'done' or k.duration_s is not null) or bool_or(k.status = 'done' and k.duration_s < 30)
           then min(k.duration_s) filter (where k.status = 'done') end as duration_s
    from (select distinct practice, chair, local_day from visit_facts where continuous and {within}) d
    left join upkeep k on k.practice = d.practice and k.chair = d.chair and k.day = d.local_day and k.task = ${text(task)}
    group by d.practice, d.chair, d.local_day
  ) u`;
}

function compiled(condition: Condition, unit: Criterion["unit"]): string {
  if ("is" in condition)
    return `coalesce(${fieldOf(unit, condition.field)} = ${literal(condition.is)}, false)`;
  if ("atLeast" in condition)
    return `coalesce(${fieldOf(unit, condition.field)} >= ${literal(condition.atLeast)}, false)`;
  if ("recorded" in condition) return `(${fieldOf(unit, condition.recorded)} is not null)`;
  if ("all" in condition) return joined(condition.all, unit, "and", "true");
  if ("any" in condition) return joined(condition.any, unit, "or", "false");
  return `not ${compiled(condition.not, unit)}`;
}

function joined(
  parts: readonly Condition[],
  unit: Criterion["unit"],
  word: string,
  none: string,
): string {
  return parts.length === 0
    ? none
    : `(${parts.map((part) => compiled(part, unit)).join(` ${word} `)})`;
}

function fieldOf(unit: Criterion["unit"], name: string): string {
  const sql = fields[unit][name];
  if (!sql) throw new RangeError(`a ${unit} has no field ${name}`);
  return sql;
}

/** All fields of a unit as one object; those that are not recorded are absent. */
function fieldsObject(unit: Criterion["unit"]): string {
  const pairs = Object.entries(fields[unit]).map(([name, sql]) => `${text(name)}, ${sql}`);
  return `jsonb_strip_nulls(jsonb_build_object(${pairs.join(", ")}))`;
}

function literal(value: string | number | boolean): string {
  return typeof value === "string" ? text(value) : String(value);
}

function text(value: string): string {
  return `'${value.replaceAll("'", "''")}'`;
}
