/** A point of a control chart with the limits that hold at it. */
export type ControlPoint = {
  value: number;
  lower: number;
  upper: number;
  outside: "above" | "below" | null;
};

/** A centre line and one entry for each period put in; null for a gap. */
export type ControlChart = { centre: number; points: (ControlPoint | null)[] };

/** A point and on which side, if any, it lies outside. A point on a limit is inside. */
export function controlPoint(value: number, lower: number, upper: number): ControlPoint {
  const below = value < lower ? "below" : null;
  return { value, lower, upper, outside: value > upper ? "above" : below };
}
