import type { UnitKind } from "@/lib/protocol/criterion";
import { listOf } from "@/lib/protocol/vocabulary";
import { canal, delivery, use } from "./field-sql";
import type { Parameters } from "./parameters";

/**
 * The lists of lib/protocol/vocabulary as relations over the sources of `source-sql`: row, place, rank and loose as in
 * lib/protocol/judged-unit, and a column for every field. A list that is not known to be complete ends in an item of
 * which nothing is known.
 */
export function listSql(unit: UnitKind, name: string, parameters: Parameters): string {
  if (name.startsWith("upkeep/")) return upkeep(parameters.bind(name.slice(7), "text"));
  const sql = lists[`${unit} ${name}`];
  if (!sql || !listOf(unit, name)) throw new RangeError(`a ${unit} has no list ${name}`);
  return sql;
}

/** What a delivery for the whole tooth says of each of its canals; the rest is nobody's share. */
const shared = ["irrigant", "concentration_pct", "activation", "basis", "delivery", "whole_tooth"];

/** What was activated in none of the canals was not in any one. */
const none = "case when i.activation = 'none' then 0::float8 end";

const ofWholeTooth = Object.fromEntries(
  Object.entries(delivery("null::text")).map(([name, sql]) => [
    name,
    shared.includes(name) ? sql : name === "activation_s" ? none : `null::${typeOf(name)}`,
  ]),
);
const nothing = (of: Record<string, string>) =>
  Object.fromEntries(Object.keys(of).map((name) => [name, `null::${typeOf(name)}`]));

function typeOf(name: string): string {
  if (name === "whole_tooth" || name === "single_use") return "boolean";
  return /_(ml|min|s|mm|pct|number|cm)$|^size$/.test(name) ? "float8" : "text";
}

const loose = { place: "null::text", rank: "null::bigint", loose: "true" };
const unknownDelivery = item("null::text", loose, nothing(delivery("null::text")));
const unknownUse = item("null::text", loose, nothing(use()));

/** SQL: the visits of a filled canal's course, with whether its timer was started afresh and what is held of it. */
export const courseVisits = `(
  select p.id, p.started_at, pf.timer_reset, pf.deliveries_held, pf.worker, pf.clinician
  from sessions p join canal_facts pf on pf.visit_id = p.id and pf.canal = u.canal
  where p.practice = v.practice and p.patient = v.patient and p.tooth = v.tooth and (p.id = v.id or (
    p.started_at <= v.started_at
    and case when p.case_id is not null and v.case_id is not null then p.case_id = v.case_id
             else p.local_day >= v.local_day - 180 end
    and not exists (
      select from sessions q join canals qc on qc.visit_id = q.id and qc.canal = u.canal and qc.filled
      where q.practice = v.practice and q.patient = v.patient and q.tooth = v.tooth
        and q.id <> v.id and q.started_at < v.started_at and q.started_at >= p.started_at))))`;

/** SQL: a delivery for the whole tooth stands beside those of canals, and nothing says when. */
const beside = "not t.timed and t.mixed and i.canal = ''";

const lists: Readonly<Record<string, string>> = {
  "canal deliveries": `(
    ${item("'irrigation/' || i.id", { place: "i.canal", rank: "i.seq::bigint", loose: "false" }, delivery("u.timer_reset"))}
    from irrigation i where i.visit_id = u.visit_id and i.canal = u.canal
    union all ${item("'irrigation/' || i.id", loose, ofWholeTooth)}
    from irrigation i where i.visit_id = u.visit_id and i.canal = ''
    union all ${unknownDelivery}
    where u.deliveries_held > 0 or not exists (select from irrigation i where i.visit_id = u.visit_id and i.canal = u.canal))`,
  "canal course": `(
    ${item("'irrigation/' || i.id", { place: "i.canal", rank: "row_number() over (order by p.started_at, p.id, i.seq)", loose: "false" }, delivery("p.timer_reset"))}
    from ${courseVisits} p join irrigation i on i.visit_id = p.id and i.canal = u.canal
    union all ${item("'irrigation/' || i.id", loose, ofWholeTooth)}
    from ${courseVisits} p join irrigation i on i.visit_id = p.id and i.canal = ''
    union all ${unknownDelivery} from (
      select bool_or(p.deliveries_held > 0) as held, bool_or(exists (select from irrigation i where i.visit_id = p.id and i.canal = u.canal)) as some
      from ${courseVisits} p) known where known.held or not known.some)`,
  "canal uses": uses("i.visit_id = u.visit_id and i.canal = u.canal"),
  "visit deliveries": `(
    ${item(
      "'irrigation/' || i.id",
      {
        place: `case when t.timed then '' when ${beside} then null else i.canal end`,
        rank: `case when not (${beside}) then row_number() over (order by case when t.timed then i.started_at end, i.canal, i.seq) end`,
        loose: beside,
      },
      delivery("k.timer_reset"),
    )}
    from irrigation i left join canals k on k.visit_id = i.visit_id and k.canal = i.canal
    cross join (select bool_and(a.started_at is not null) as timed, bool_or(a.canal <> '') as mixed from irrigation a where a.visit_id = u.visit_id) t
    where i.visit_id = u.visit_id
    union all ${unknownDelivery}
    where u.deliveries_held > 0 or not exists (select from irrigation i where i.visit_id = u.visit_id))`,
  "visit uses": uses("i.visit_id = u.visit_id"),
  "visit canals": `(
    ${item("'canals/' || k.id", { place: "k.canal", rank: "null::bigint", loose: "true" }, canal("k"))}
    from canals k where k.visit_id = u.visit_id)`,
  "visit gaps": `(
    ${item("null::text", loose, { criterion: "g.criterion" })} from unnest(gaps.lacking) g(criterion))`,
};

function uses(where: string): string {
  return `(
    ${item("'instruments/' || i.id", { place: "i.canal", rank: "i.seq::bigint", loose: "false" }, use())}
    from instruments i where ${where}
    union all ${unknownUse}
    where u.uses_held > 0 or not exists (select from instruments i where ${where}))`;
}

function upkeep(task: string): string {
  const where = `k.practice = u.practice and k.chair = u.chair and k.day = u.local_day and k.task = ${task}`;
  return `(
    ${item("'upkeep/' || k.id", loose, { status: "k.status", duration_s: "k.duration_s" })} from upkeep k where ${where}
    union all ${item("null::text", loose, { status: "null::text", duration_s: "null::float8" })}
    where not exists (select from upkeep k where ${where}))`;
}

function item(
  row: string,
  at: { place: string; rank: string; loose: string },
  fields: Record<string, string>,
): string {
  const columns = Object.entries({ row, ...at, ...fields });
  return `select ${columns.map(([name, sql]) => `${sql} as "${name}"`).join(", ")}`;
}
