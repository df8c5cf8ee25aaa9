import { type Protocol, spansOf } from "./protocol";

/**
 * May a version of the criterion begin in the practice on that day without altering a past figure: from today on it
 * may; earlier only where the criterion was in force on no day in between.
 */
export function mayBegin(
  protocol: Protocol,
  of: {
    readonly id: string;
    readonly practice: string;
    readonly from: string;
    readonly today: string;
  },
): boolean {
  if (of.from >= of.today) return true;
  return !spansIn(protocol, of).some(
    ({ from, until }) => (from === null || from < of.today) && (until === null || until > of.from),
  );
}

/** The spans in which a criterion is in force in a practice. */
export function spansIn(
  protocol: Protocol,
  { id, practice }: { readonly id: string; readonly practice: string },
) {
  return spansOf(protocol, id).filter(({ practices }) =>
    "only" in practices ? practices.only === practice : !practices.allBut.includes(practice),
  );
}
