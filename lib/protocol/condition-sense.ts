import { isOwnCode } from "@/lib/records/own-code";
import { tables } from "@/lib/records/tables";
import type { Comparison, Condition, OverList } from "./condition";
import type { UnitKind } from "./criterion";
import type { Field, List } from "./field";
import type { WrongPart } from "./read-condition";
import { listIn } from "./truth";
import { fieldOf, listOf } from "./vocabulary";

/** What a condition is about. */
type Place = {
  readonly unit: UnitKind;
  /** Set inside a list's items. */
  readonly list?: List;
  /** May a limit stay unset. */
  readonly unset: boolean;
};

/** The steps of the record format. */
export const formatSteps: readonly string[] =
  tables.steps.columns.find(({ name }) => name === "step")?.choices ?? [];
/** The upkeep tasks that are known from the start. */
export const formatTasks: readonly string[] = ["line-rinse", "line-dry"];

/** Is it true of everything: nothing is demanded. */
export function isWhatever(condition: Condition): boolean {
  return "all" in condition && condition.all.every(isWhatever);
}

/** Says where a condition asks for what a unit does not have. */
export function senseOf(condition: Condition, place: Place, path: string): WrongPart[] {
  if ("field" in condition) return comparisonSense(condition, place, path);
  if ("recorded" in condition)
    return fieldIn(place, condition.recorded) ? [] : [noField(`${path}.recorded`)];
  if ("known" in condition) return senseOf(condition.known, place, `${path}.known`);
  if ("not" in condition) return senseOf(condition.not, place, `${path}.not`);
  if ("all" in condition)
    return condition.all.flatMap((part, at) => senseOf(part, place, `${path}.all.${at}`));
  if ("any" in condition)
    return condition.any.flatMap((part, at) => senseOf(part, place, `${path}.any.${at}`));
  return listSense(condition, place, path);
}

function listSense(condition: OverList, place: Place, path: string): WrongPart[] {
  if (place.list) return [{ path, message: "An item of a list has no list of its own." }];
  const name = listIn(condition);
  const list = knownList(place.unit, name);
  if (!list) return [{ path, message: "Such a unit has no list of that name." }];
  const ordered = "nextTo" in condition || "between" in condition || "after" in condition;
  if (ordered && !list.ordered) return [{ path, message: `No order is known of ${list.words}.` }];
  const within = { ...place, list };
  const wrong = Object.entries(condition).flatMap(([key, part]) =>
    typeof part === "object" && part !== null && !Array.isArray(part)
      ? senseOf(part as Condition, within, `${path}.${key}`)
      : [],
  );
  if ("every" in condition && isWhatever(condition.are))
    return [{ path: `${path}.are`, message: "Say what must hold of it." }, ...wrong];
  return "total" in condition ? [...totalSense(condition, within, path), ...wrong] : wrong;
}

function totalSense(
  condition: Extract<OverList, { total: readonly string[] }>,
  place: Place & { list: List },
  path: string,
): WrongPart[] {
  const fields = condition.total.map((name) => fieldIn(place, name));
  if (fields.some((field) => field?.kind !== "number"))
    return [{ path: `${path}.total`, message: "Only numbers can be added up." }];
  if (new Set(condition.total).size < fields.length)
    return [{ path: `${path}.total`, message: "Each is added up once." }];
  if (new Set(fields.map((field) => field?.unit)).size > 1)
    return [{ path: `${path}.total`, message: "These have different units: they do not add up." }];
  const [end, limit] =
    "atLeast" in condition ? ["atLeast", condition.atLeast] : ["atMost", condition.atMost];
  return limit === null && !place.unset ? [noLimit(`${path}.${end}`)] : [];
}

function comparisonSense(comparison: Comparison, place: Place, path: string): WrongPart[] {
  const field = fieldIn(place, comparison.field);
  if (!field) return [noField(`${path}.field`)];
  if ("is" in comparison)
    return fits(field, comparison.is) ? [] : [{ path: `${path}.is`, message: valueWanted(field) }];
  if ("among" in comparison) {
    const { among } = comparison;
    if (field.kind === "number" || field.kind === "flag")
      return [{ path: `${path}.among`, message: "One of several is for choices." }];
    return among.every((one) => fits(field, one)) && new Set(among).size === among.length
      ? []
      : [{ path: `${path}.among`, message: valueWanted(field) }];
  }
  const end = "atLeast" in comparison ? "atLeast" : "atMost";
  const limit = "atLeast" in comparison ? comparison.atLeast : comparison.atMost;
  if (field.kind !== "number")
    return [{ path: `${path}.${end}`, message: "A limit is for numbers." }];
  return limit === null && !place.unset ? [noLimit(`${path}.${end}`)] : [];
}

function fits(field: Field, value: string | number | boolean): boolean {
  if (field.kind === "number") return typeof value === "number";
  if (field.kind === "flag") return typeof value === "boolean";
  if (typeof value !== "string") return false;
  return field.kind === "text" || (field.choices ?? []).includes(value);
}

function fieldIn(place: Place, name: string): Field | undefined {
  if (place.list) return place.list.fields.find((field) => field.name === name);
  if (!name.startsWith("step/")) return fieldOf(place.unit, name);
  const step = name.slice("step/".length);
  return formatSteps.includes(step) || isOwnCode(step) ? fieldOf(place.unit, name) : undefined;
}

function knownList(unit: UnitKind, name: string): List | undefined {
  if (!name.startsWith("upkeep/")) return listOf(unit, name);
  const task = name.slice("upkeep/".length);
  return formatTasks.includes(task) || isOwnCode(task) ? listOf(unit, name) : undefined;
}

function valueWanted(field: Field): string {
  if (field.kind === "number") return "Write a number.";
  return field.kind === "text" ? "Write what it is." : "Choose from the list, each once.";
}

function noField(path: string): WrongPart {
  return { path, message: "Choose what is looked at: such a unit does not have this." };
}

function noLimit(path: string): WrongPart {
  return { path, message: "Set the limit." };
}
