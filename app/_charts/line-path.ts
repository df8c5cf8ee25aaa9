/**
 * A line through points in pixels, with a gap where there is none.
 * @returns the `d` of an SVG path; a point between two gaps is in it and draws nothing.
 */
export function linePath(points: readonly ({ x: number; y: number } | null)[]): string {
  return points
    .map((point, place) => (point ? `${points[place - 1] ? "L" : "M"}${point.x} ${point.y}` : ""))
    .join("");
}
