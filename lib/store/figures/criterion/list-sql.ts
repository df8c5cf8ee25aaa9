import type { UnitKind } from "@/lib/protocol/criterion";
import { listOf } from "@/lib/protocol/vocabulary";
import { canal, delivery, use } from "./field-sql";
import type { Parameters } from "./parameters";

/**
 * The lists of lib/protocol/vocabulary as relations over what `gathered-sql` gathers of all units asked for: whose item it is, row, place,
 * rank and loose as in lib/protocol/judged-unit, and a column for every field. A list that is not known to be complete ends in an
 * item of which nothing is known; where nothing is recorded it is what an outer join finds.
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

const canalKey = { visit_id: "u.visit_id", canal: "u.canal" };
const visitKey = { visit_id: "u.visit_id" };
const ownDelivery = { place: "i.canal", rank: "i.seq::bigint", loose: "i.id is null" };

/** SQL: a delivery for the whole tooth stands beside those of canals, and nothing says when. */
const beside = "not i.timed and i.mixed and i.canal = ''";

const lists: Readonly<Record<string, string>> = {
  "canal deliveries": `(
    ${item(canalKey, "'irrigation/' || i.id", ownDelivery, delivery("u.timer_reset"))}
    from asked u left join deliveries i on i.visit_id = u.visit_id and i.canal = u.canal
    union all ${item(canalKey, "'irrigation/' || i.id", loose, ofWholeTooth)}
    from asked u join deliveries i on i.visit_id = u.visit_id and i.canal = ''
    union all ${item(canalKey, "null::text", loose, nothing(delivery("null::text")))}
    from asked u where u.deliveries_held > 0 and exists (select from deliveries i where i.visit_id = u.visit_id and i.canal = u.canal))`,
  "canal course": `(
    ${item(canalKey, "'irrigation/' || i.id", { ...ownDelivery, rank: "case when i.id is not null then row_number() over (partition by u.visit_id, u.canal order by i.began, i.visit_id, i.seq) end" }, delivery("i.timer_reset"))}
    from asked u left join (
      select p.visit_id as of_visit, p.started_at as began, p.timer_reset, i.* from course p join deliveries i on i.visit_id = p.id and i.canal = p.canal
    ) i on i.of_visit = u.visit_id and i.canal = u.canal
    union all ${item(canalKey, "'irrigation/' || i.id", loose, ofWholeTooth)}
    from course u join deliveries i on i.visit_id = u.id and i.canal = ''
    union all ${item(canalKey, "null::text", loose, nothing(delivery("null::text")))}
    from (select p.visit_id, p.canal from course p where p.deliveries_held > 0 group by p.visit_id, p.canal) u
    where exists (select from course p join deliveries i on i.visit_id = p.id and i.canal = p.canal where p.visit_id = u.visit_id and p.canal = u.canal))`,
  "canal uses": uses(canalKey, "i.visit_id = u.visit_id and i.canal = u.canal"),
  "visit deliveries": `(
    ${item(
      visitKey,
      "'irrigation/' || i.id",
      {
        place: `case when i.timed then '' when ${beside} then null else i.canal end`,
        rank: `case when not (${beside}) then row_number() over (partition by u.visit_id order by case when i.timed then i.started_at end, i.canal, i.seq) end`,
        loose: beside,
      },
      delivery("k.timer_reset"),
    )}
    from asked u join (
      select i.*, bool_and(i.started_at is not null) over visit as timed, bool_or(i.canal <> '') over visit as mixed
      from deliveries i window visit as (partition by i.visit_id)
    ) i on i.visit_id = u.visit_id
    left join canals k on k.visit_id = i.visit_id and k.canal = i.canal
    union all ${item(visitKey, "null::text", loose, nothing(delivery("null::text")))}
    from asked u where u.deliveries_held > 0 or not exists (select from deliveries i where i.visit_id = u.visit_id))`,
  "visit uses": uses(visitKey, "i.visit_id = u.visit_id"),
  "visit canals": `(
    ${item(visitKey, "'canals/' || k.id", { place: "k.canal", rank: "null::bigint", loose: "true" }, canal("k"))}
    from asked u join canals k on k.visit_id = u.visit_id)`,
  "visit gaps": `(
    ${item({ visit_id: "g.visit_id" }, "null::text", loose, { criterion: "g.criterion" })} from gaps g)`,
};

function uses(of: Record<string, string>, where: string): string {
  return `(
    ${item(of, "'instruments/' || i.id", { place: "i.canal", rank: "i.seq::bigint", loose: "i.id is null" }, use())}
    from asked u left join uses i on ${where}
    union all ${item(of, "null::text", loose, nothing(use()))}
    from asked u where u.uses_held > 0 and exists (select from uses i where ${where}))`;
}

function upkeep(task: string): string {
  const of = { practice: "u.practice", chair: "u.chair", local_day: "u.local_day" };
  return `(
    ${item(of, "'upkeep/' || k.id", loose, { status: "k.status", duration_s: "k.duration_s" })}
    from asked u left join upkeep k on k.practice = u.practice and k.chair = u.chair and k.day = u.local_day and k.task = ${task})`;
}

/** SQL: whose item it is, what it is a row of, where it stands, and its fields. */
function item(
  of: Record<string, string>,
  row: string,
  at: { place: string; rank: string; loose: string },
  fields: Record<string, string>,
): string {
  const columns = Object.entries({ ...of, row, ...at, ...fields });
  return `select ${columns.map(([name, sql]) => `${sql} as "${name}"`).join(", ")}`;
}
