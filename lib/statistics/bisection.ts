/**
 * The place between `low` and `high` where `above` turns from false to true, halved until
 * doubles run out, so that small roots keep their relative precision.
 * @param above false left of the root, true right of it, turning once
 */
export function bisect(above: (value: number) => boolean, low: number, high: number): number {
  let left = low;
  let right = high;
  for (;;) {
    const middle = left + (right - left) / 2;
    if (middle <= left || middle >= right) return middle;
    if (above(middle)) right = middle;
    else left = middle;
  }
}
