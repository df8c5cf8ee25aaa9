/**
 * The periods from which a centre line and limits are computed: indexes, held half-open. Limits are
 * drawn over all periods. A chart that is rebased is one call for each of its segments.
 */
export type BaselineRange = { from: number; to: number };

/**
 * The periods within the baseline, all others made gaps, so that what lies beside each other stays
 * so. Without a baseline all of them.
 * @throws RangeError for a range that is not whole, is empty, or leaves the periods
 */
export function withinBaseline<T>(
  periods: readonly (T | null)[],
  baseline: BaselineRange | undefined,
): (T | null)[] {
  if (baseline === undefined) return periods.slice();
  const { from, to } = baseline;
  const whole = Number.isInteger(from) && Number.isInteger(to);
  if (!(whole && from >= 0 && from < to && to <= periods.length)) {
    throw new RangeError(`no baseline from ${from} to ${to} among ${periods.length} periods`);
  }
  return periods.map((period, index) => (index >= from && index < to ? period : null));
}
