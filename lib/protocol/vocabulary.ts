import type { UnitKind } from "./criterion";
import { columnField as column, type Field, type List } from "./field";

/** The statuses of a step, which are also those of the field step/<name>. */
export const stepStatuses = ["done", "not-done", "not-applicable", "excepted"] as const;

const visit: readonly Field[] = [
  column("sessions", "treatment", "the treatment"),
  column("sessions", "outcome", "the visit's outcome"),
  column("sessions", "pulp", "the pulp on arrival"),
  column("sessions", "difficulty", "the difficulty"),
  choice("tooth_group", "the group of teeth", ["incisor or canine", "premolar", "molar"]),
  choice("jaw", "the jaw", ["upper", "lower"]),
  choice("dentition", "the dentition", ["permanent", "primary"]),
];

const canal: readonly Field[] = [
  column("canals", "preparation", "the preparation"),
  column("canals", "working_length_mm", "the working length"),
  column("canals", "length_method", "how the length was found"),
  column("canals", "curvature_deg", "the curvature"),
  column("canals", "apex", "the apex"),
  column("canals", "apical_size", "the apical size"),
  column("canals", "preparation_s", "the time of preparation"),
  column("canals", "timer_reset", "the timer started afresh"),
  column("canals", "filled", "the canal filled"),
  column("canals", "fragment_on_arrival", "a fragment on arrival"),
  {
    ...column("irrigation", "irrigant", "the irrigant of largest known volume"),
    name: "main_irrigant",
  },
];

const delivery: readonly Field[] = [
  column("irrigation", "irrigant", "the irrigant"),
  column("irrigation", "concentration_pct", "the strength"),
  column("irrigation", "volume_ml", "the volume"),
  column("irrigation", "flow_ml_min", "the flow"),
  column("irrigation", "duration_s", "the time it flowed"),
  column("irrigation", "dwell_s", "the time it was left in place"),
  column("irrigation", "activation", "the activation"),
  column("irrigation", "activation_s", "the time of activation"),
  column("irrigation", "basis", "the basis of the numbers"),
  column("irrigation", "delivery", "the way of delivery"),
  column("irrigation", "tip_short_mm", "how far the tip stayed short"),
  { name: "whole_tooth", words: "written for the whole tooth", kind: "flag" },
];

const use: readonly Field[] = [
  column("instruments", "kind", "the kind of instrument"),
  column("instruments", "size", "the size"),
  column("instruments", "taper_pct", "the taper"),
  column("instruments", "lot", "the lot"),
  column("instruments", "steriliser_cycle", "the steriliser cycle"),
  column("instruments", "single_use", "for single use"),
  column("instruments", "use_number", "the number of the use"),
  column("instruments", "speed_per_min", "the speed set"),
  column("instruments", "torque_n_cm", "the torque set"),
];

/** The management is the latest that follow-ups bear, else the use's own; told is yes where anything says so. */
const separation: readonly Field[] = [
  column("instruments", "third", "the third of the canal"),
  column("instruments", "fragment_mm", "the fragment's length"),
  column("instruments", "management", "what became of it"),
  column("instruments", "patient_told", "the patient told"),
  { name: "open_days", words: "the days it stayed pending", kind: "number", unit: "d" },
];

const wholeVisit: readonly Field[] = [
  { name: "powered", words: "a powered instrument used", kind: "flag" },
  { name: "continuous", words: "irrigant delivered while a file worked", kind: "flag" },
  { name: "held_rows", words: "the held rows", kind: "number" },
];

const gap: readonly Field[] = [{ name: "criterion", words: "the criterion", kind: "text" }];

/** An upkeep task, where it was done on the chair, a row a device; of the list upkeep/<task>. */
const upkeep: readonly Field[] = [
  column("upkeep", "status", "the status"),
  column("upkeep", "duration_s", "the time it took"),
];

/** The fields that a unit of the kind has; beside these, units of a visit have step/<name> for every step. */
export const unitFields: Readonly<Record<UnitKind, readonly Field[]>> = {
  canal: [...canal, ...visit],
  delivery: [...delivery, ...canal, ...visit],
  use: [...use, ...canal, ...visit],
  separation: [...separation, ...use, ...canal, ...visit],
  visit: [...wholeVisit, ...visit],
  "chair-day": [],
};

const deliveries = (name: string, words: string): List => ({
  name,
  words,
  item: "delivery",
  fields: delivery,
  ordered: true,
});
const uses: List = { name: "uses", words: "the uses", item: "use", fields: use, ordered: true };

/** The lists that hang on a unit of the kind; beside these, chair-days have upkeep/<task> for every task. */
export const unitLists: Readonly<Record<UnitKind, readonly List[]>> = {
  canal: [
    deliveries("deliveries", "the canal's deliveries"),
    deliveries("course", "the canal's deliveries in the whole course"),
    uses,
  ],
  delivery: [],
  use: [],
  separation: [],
  visit: [
    deliveries("deliveries", "the visit's deliveries"),
    uses,
    { name: "canals", words: "the visit's canals", item: "canal", fields: canal, ordered: false },
    {
      name: "gaps",
      words: "what the other criteria lack",
      item: "gap",
      fields: gap,
      ordered: false,
    },
  ],
  "chair-day": [],
};

/** The field of that name; undefined where a unit of the kind has none. */
export function fieldOf(unit: UnitKind, name: string): Field | undefined {
  if (name.startsWith("step/") && unit !== "chair-day")
    return choice(name, `the step ${name.slice(5)}`, [...stepStatuses]);
  return unitFields[unit].find((field) => field.name === name);
}

/** The list of that name; undefined where a unit of the kind has none. */
export function listOf(unit: UnitKind, name: string): List | undefined {
  if (name.startsWith("upkeep/") && unit === "chair-day")
    return {
      name,
      words: `the chair's ${name.slice(7).replaceAll("-", " ")}`,
      item: "device",
      fields: upkeep,
      ordered: false,
    };
  return unitLists[unit].find((list) => list.name === name);
}

function choice(name: string, words: string, choices: readonly string[]): Field {
  return { name, words, kind: "choice", choices };
}
