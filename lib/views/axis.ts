import type { ChartAxis } from "./chart-rows";
import { decimal, duration } from "./quantity";

/** What an axis measures: a UCUM unit, or a share between 0 and 1. */
export type AxisUnit = "share" | (string & {});

/**
 * A round axis that holds the values, with four to seven ticks. Shares and other values that cannot be negative
 * stay at or above 0; shares at or below 1.
 *
 * @param values what must lie on the axis; none gives 0 to 1
 * @param fromZero start at 0 whatever the values
 */
export function axisOf(
  values: readonly number[],
  unit: AxisUnit,
  title: string,
  fromZero = false,
): ChartAxis {
  const known = values.filter(Number.isFinite);
  const low = fromZero || known.length === 0 ? 0 : Math.min(...known);
  const high = known.length === 0 ? 1 : Math.max(...known);
  // Narrower than a millionth there is nothing to draw apart.
  const step = stepFor(Math.max(high - low || Math.abs(high) || 1, 1e-6), unit);
  const min = Math.max(0, Math.floor(low / step) * step);
  const top = Math.max(Math.ceil(high / step) * step, min + step);
  const max = unit === "share" ? Math.min(1, top) : top;
  const ticks = Array.from({ length: Math.round((max - min) / step) + 1 }, (_, place) => {
    const value = Math.min(max, Number((min + place * step).toPrecision(12)));
    return { value, words: tickWords(value, step, unit) };
  });
  return { min, max, ticks, title };
}

function stepFor(range: number, unit: AxisUnit): number {
  const rough = range / 5;
  if (unit === "s" && rough > 1) {
    const found = [2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800].find((step) => step >= rough);
    return found ?? Math.ceil(rough / 3600) * 3600;
  }
  const power = 10 ** Math.floor(Math.log10(rough));
  const factor = [1, 2, 5, 10].find((one) => one * power >= rough * 0.999999) ?? 10;
  return Number((factor * power).toPrecision(12));
}

function tickWords(value: number, step: number, unit: AxisUnit): string {
  if (unit === "s")
    return step % 60 === 0 ? (value === 0 ? "0" : `${value / 60} min`) : duration(value);
  const shown = unit === "share" ? 100 : 1;
  const decimals = Math.max(0, -Math.floor(Math.log10(step * shown) + 1e-9));
  const text = decimal(value * shown, decimals);
  return unit === "share" ? `${text} %` : text;
}
