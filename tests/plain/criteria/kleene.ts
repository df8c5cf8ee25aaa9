/** True, false, or not known (Kleene's three values). */
export type Truth = boolean | undefined;

/** Known to hold: what is not known does not. */
export function known(truth: Truth): boolean {
  return truth === true;
}

export function all(truths: readonly Truth[]): Truth {
  if (truths.some((one) => one === false)) return false;
  return truths.every((one) => one === true) ? true : undefined;
}

export function any(truths: readonly Truth[]): Truth {
  if (truths.some((one) => one === true)) return true;
  return truths.every((one) => one === false) ? false : undefined;
}

/** The value is one of those wanted. */
export function is(value: unknown, ...wanted: readonly unknown[]): Truth {
  return value === undefined ? undefined : wanted.includes(value);
}

export function atLeast(value: unknown, limit: number): Truth {
  return value === undefined ? undefined : Number(value) >= limit;
}

export function atMost(value: unknown, limit: number): Truth {
  return value === undefined ? undefined : Number(value) <= limit;
}
