/** One step, in pixels; no height where there is no line; `anew` where the line begins again. */
export type Step = {
  readonly middle: number;
  readonly height: number | null;
  readonly anew: boolean;
};

/**
 * A line of steps, each as wide as its point's column: joined to the step before it unless that one is missing or
 * the line begins anew.
 * @param half half the width of a column.
 * @returns the `d` of an SVG path, empty where there is no step.
 */
export function stepPath(steps: readonly Step[], half: number): string {
  return steps
    .map(({ middle, height, anew }, place) => {
      if (height === null) return "";
      const before = steps[place - 1];
      const joined = before && before.height !== null && !anew;
      return `${joined ? "L" : "M"}${middle - half} ${height}H${middle + half}`;
    })
    .join("");
}
