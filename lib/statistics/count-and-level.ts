/**
 * Refuses counts that cannot be: not whole, negative, NaN, or more events than units.
 * @throws RangeError
 */
export function requireEventsAmong(events: number, units: number): void {
  requireCount(units, "number of units");
  requireCount(events, "number of events");
  if (events > units) throw new RangeError(`${events} events among ${units} units cannot be`);
}

/**
 * Refuses a count that is not whole, negative or NaN.
 * @throws RangeError
 */
export function requireCount(count: number, what: string): void {
  if (!Number.isSafeInteger(count) || count < 0) {
    throw new RangeError(`the ${what} must be a whole number, 0 or more: ${count}`);
  }
}

/**
 * Refuses a confidence level that is not strictly between 0 and 1.
 * @throws RangeError
 */
export function requireLevel(level: number): void {
  if (!(level > 0 && level < 1)) {
    throw new RangeError(`the level must lie between 0 and 1, ends excluded: ${level}`);
  }
}
