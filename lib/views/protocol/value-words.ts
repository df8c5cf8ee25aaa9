import type { Field } from "@/lib/protocol/field";
import { reasonWords } from "../reason-words";
import { irrigantWords } from "../record-words";

/** A value that was chosen for a field, as it reads in a sentence. */
export function valueWords(field: Field, value: string | number | boolean): string {
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") return setQuantity(value, field.unit);
  if (field.name === "irrigant" || field.name === "main_irrigant") return irrigantWords(value);
  return choices[`${field.name}/${value}`] ?? choices[value] ?? reasonWords(value);
}

/** A number that was set and not measured, with its unit: no more decimals than it has. */
export function setQuantity(value: number, unit: string | undefined): string {
  const number = String(Number(value.toFixed(6)));
  return unit === undefined ? number : `${number}${unitOf(unit)}`;
}

/** A UCUM unit beside a number: " mL"; of sizes in 1/100 mm nothing, as the trade says only the number. */
export function unitOf(unit: string | undefined): string {
  if (unit === undefined || unit === "10.um") return "";
  return unit === "deg" ? "°" : ` ${units[unit] ?? unit}`;
}

const units: Readonly<Record<string, string>> = {
  "/min": "turns a minute",
  "N.cm": "N·cm",
  d: "days",
};
const choices: Readonly<Record<string, string>> = {
  "treatment/primary": "first treatment",
  "length_method/locator": "apex locator",
  "length_method/both": "both together",
  "length_method/estimate": "estimate alone",
  "delivery/continuous": "continuous, while the file works",
  "negative-pressure": "negative pressure",
  "dentition/primary": "primary",
  "timer_reset/no-timer": "there was no timer",
  "third/beyond": "beyond the apex",
  "activation/none": "none",
  "preparation/none": "none",
  metered: "metered",
  timer: "read off a timer",
  noted: "noted by hand",
  "not-done": "not done",
};
