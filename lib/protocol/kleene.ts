/** True, false, or unknown as undefined (Kleene's three values). */
export type Truth = boolean | undefined;

/** True where one is, unknown where one could be, else false. */
export function some(truths: readonly Truth[]): Truth {
  if (truths.includes(true)) return true;
  return truths.includes(undefined) ? undefined : false;
}

/** False where one is, unknown where one could be, else true. */
export function every(truths: readonly Truth[]): Truth {
  if (truths.includes(false)) return false;
  return truths.includes(undefined) ? undefined : true;
}

export function not(truth: Truth): Truth {
  return truth === undefined ? undefined : !truth;
}
