/** Pattern of a code that a practice made itself: a step, an upkeep task, a reason or a criterion. */
export const ownCodePattern = "own-[a-z0-9-]{1,60}";

const whole = new RegExp(`^${ownCodePattern}$`);

/** Is the code one that a practice made itself. */
export function isOwnCode(code: string): boolean {
  return whole.test(code);
}
