/**
 * Refuses what is not a number from 0 to 1, ends included.
 * @throws RangeError
 */
export function requireProbability(value: number, what: string): void {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${what} must lie from 0 to 1: ${value}`);
}

/**
 * Refuses what is not a number strictly between 0 and 1.
 * @throws RangeError
 */
export function requireInnerProbability(value: number, what: string): void {
  if (!(value > 0 && value < 1)) {
    throw new RangeError(`${what} must lie between 0 and 1, ends excluded: ${value}`);
  }
}
