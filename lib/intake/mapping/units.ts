import type { SourceUnit } from "./source-units";

/** Each unit as so many of the first of its kind; factors are exact by definition (SI brochure; inch 25.4 mm; standard gravity). */
const kinds: readonly Readonly<Partial<Record<SourceUnit, number>>>[] = [
  { mL: 1, cm3: 1, uL: 1e-3, mm3: 1e-3, dL: 100, L: 1000 },
  { "mL/min": 1, "mL/s": 60, "mL/h": 1 / 60, "L/min": 1000, "uL/s": 0.06 },
  { s: 1, ms: 1e-3, min: 60, h: 3600, "min:s": 1, "h:min:s": 1, "ISO 8601": 1 },
  { mm: 1, cm: 10, um: 1e-3, "10.um": 1e-2, "[in_i]": 25.4 },
  { deg: 1, rad: 180 / Math.PI },
  { "%": 1, "1": 100 },
  { "/min": 1, "/s": 60 },
  { "N.cm": 1, "N.m": 100, "mN.m": 0.1, "gf.cm": 0.00980665 },
];

/** The units that can be converted into a field's own, that one first. */
export function unitsFor(own: string): SourceUnit[] {
  const kind = kinds.find((one) => own in one) ?? {};
  const all = Object.keys(kind) as SourceUnit[];
  return [...all.filter((unit) => unit === own), ...all.filter((unit) => unit !== own)];
}

/**
 * A number of one unit in another of the same kind, rounded to 12 significant digits so that .1 mL/s is 6 mL/min.
 *
 * @returns undefined where the two are not of one kind
 */
export function converted(value: number, from: SourceUnit, to: string): number | undefined {
  const kind = kinds.find((one) => from in one);
  const one = kind?.[from];
  const other = kind?.[to as SourceUnit];
  if (one === undefined || other === undefined) return undefined;
  return Number(((value * one) / other).toPrecision(12));
}

/** A length of time written with colons, in seconds: 2:45, or 1:02:45. Minutes and seconds after a colon are below 60. */
export function colonSeconds(text: string, unit: "min:s" | "h:min:s"): number | undefined {
  const shape =
    unit === "min:s"
      ? /^(\d{1,4}):([0-5]?\d(?:[.,]\d+)?)$/
      : /^(\d{1,3}):([0-5]?\d):([0-5]?\d(?:[.,]\d+)?)$/;
  const parts = shape.exec(text);
  if (!parts) return undefined;
  return parts.slice(1).reduce((sum, part) => sum * 60 + Number(part.replace(",", ".")), 0);
}

const number = String.raw`(\d+(?:[.,]\d+)?)`;
const isoShape = new RegExp(
  `^P(?=.)(?:${number}D)?(?:T(?=.)(?:${number}H)?(?:${number}M)?(?:${number}S)?)?$`,
  "i",
);

/** A duration by ISO 8601 of days, hours, minutes and seconds, in seconds: PT2M45S. */
export function isoSeconds(text: string): number | undefined {
  const parts = isoShape.exec(text);
  if (!parts) return undefined;
  const [days, hours, minutes, seconds] = parts
    .slice(1)
    .map((part) => Number((part ?? "0").replace(",", "."))) as [number, number, number, number];
  return ((days * 24 + hours) * 60 + minutes) * 60 + seconds;
}
