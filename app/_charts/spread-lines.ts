/**
 * Heights for lines of text that each want to stand somewhere, moved down where they would touch.
 * @param wanted heights in pixels, from the top down.
 * @param least the least distance between two lines.
 */
export function spreadLines(wanted: readonly number[], least: number): number[] {
  const given: number[] = [];
  for (const height of wanted) {
    const last = given.at(-1);
    given.push(last === undefined ? height : Math.max(height, last + least));
  }
  return given;
}
