import type { Comparison, Condition, OverList } from "@/lib/protocol/condition";
import { listIn } from "@/lib/protocol/truth";
import { fieldSql } from "./field-sql";
import type { Gathering } from "./gathering";
import { inOrderSql } from "./in-order-sql";
import { gatheredEvery, gatheredSome } from "./kleene-sql";
import { mainIrrigantOfUnit } from "./main-irrigant-of-unit";
import type { Parameters } from "./parameters";
import { stepStatus } from "./step-sql";

/**
 * A condition as SQL: true, false, or null for unknown, as PostgreSQL's own `and`, `or` and `not` have it. Names come from
 * the vocabulary and values are parameters: no text of a criterion gets into the query.
 */
export function conditionSql(condition: Condition, gathering: Gathering): string {
  return compiled(condition, {
    parameters: gathering.parameters,
    field: (name) => unitField(name, gathering),
    list: (name) => (aggregate) => gathering.of(name, aggregate),
    onePlace: gathering.unit === "canal",
  });
}

/** What is asked of a unit or of an item of a list. */
type Asked = {
  readonly parameters: Parameters;
  readonly field: (name: string) => string;
  /** What gathers aggregates over the items `e` of a list. */
  readonly list: (name: string) => (aggregate: string) => string;
  /** The lists of the unit are of one place. */
  readonly onePlace: boolean;
};

/** SQL: a field of the unit. */
export function unitField(name: string, gathering: Gathering): string {
  const { unit } = gathering;
  if (name.startsWith("step/") && unit !== "chair-day") return stepStatus(name.slice(5), gathering);
  if (name === "main_irrigant" && unit === "canal") return mainIrrigantOfUnit(gathering);
  const sql = fieldSql[unit][name];
  if (!sql) throw new RangeError(`a ${unit} has no field ${name}`);
  return sql;
}

function compiled(condition: Condition, asked: Asked): string {
  if ("field" in condition) return compared(condition, asked);
  if ("recorded" in condition) return `(${asked.field(condition.recorded)} is not null)`;
  if ("known" in condition) return `coalesce(${compiled(condition.known, asked)}, false)`;
  if ("all" in condition) return joined(condition.all, asked, " and ", "true");
  if ("any" in condition) return joined(condition.any, asked, " or ", "false");
  if ("not" in condition) return `(not ${compiled(condition.not, asked)})`;
  return overList(condition, asked);
}

function joined(parts: readonly Condition[], asked: Asked, word: string, none: string): string {
  return parts.length === 0 ? none : `(${parts.map((part) => compiled(part, asked)).join(word)})`;
}

function compared(comparison: Comparison, { field, parameters }: Asked): string {
  const value = `(${field(comparison.field)})`;
  if ("is" in comparison) {
    const type = { string: "text", number: "float8", boolean: "boolean" } as const;
    const of = type[typeof comparison.is as keyof typeof type];
    return `(${value} = ${parameters.bind(comparison.is, of)})`;
  }
  if ("among" in comparison)
    return `(${value} = any(${parameters.bind([...comparison.among], "text[]")}))`;
  const [sign, limit] =
    "atLeast" in comparison ? [">=", comparison.atLeast] : ["<=", comparison.atMost];
  return limit === null
    ? "null::boolean"
    : `(${value} ${sign} ${parameters.bind(limit, "float8")})`;
}

function overList(condition: OverList, asked: Asked): string {
  const list = asked.list(listIn(condition));
  const of = (part: Condition) =>
    compiled(part, {
      parameters: asked.parameters,
      onePlace: asked.onePlace,
      field: (name) => `e."${name.replaceAll('"', "")}"`,
      list: (name) => {
        throw new RangeError(`an item of a list has no list ${name}`);
      },
    });
  if ("some" in condition) return gatheredSome(of(condition.that), list);
  if ("every" in condition)
    return gatheredEvery(`(not ${of(condition.that)} or ${of(condition.are)})`, list);
  if ("total" in condition) return totalled(condition, of, list, asked.parameters);
  return inOrderSql(condition, list, of, asked.onePlace);
}

function totalled(
  condition: Extract<OverList, { total: readonly string[] }>,
  of: (part: Condition) => string,
  list: (aggregate: string) => string,
  parameters: Parameters,
): string {
  const limit = "atLeast" in condition ? condition.atLeast : condition.atMost;
  // Nothing is compiled of it then, as a parameter that no query names is an error.
  if (limit === null) return "null::boolean";
  const that = of(condition.that);
  const fields = condition.total.map((name) => `e."${name.replaceAll('"', "")}"`);
  const sum = fields.map((field) => `coalesce(${field}, 0)`).join(" + ");
  const missing = fields.map((field) => `${field} is null`).join(" or ");
  // To a millionth, so that the order in which floats are added makes no difference.
  const total = `coalesce(${list(`round(sum(${sum}) filter (where ${that})::numeric, 6)`)}, 0)`;
  const more = list(`bool_or((${that}) is null or ((${that}) and (${missing})))`);
  const bound = `${parameters.bind(limit, "float8")}::numeric`;
  return "atLeast" in condition
    ? `(case when ${total} >= ${bound} then true when ${more} then null else false end)`
    : `(case when ${total} > ${bound} then false when ${more} then null else true end)`;
}
