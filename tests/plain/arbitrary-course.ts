import * as fc from "fast-check";
import { type VisitDraft, visitDraft } from "./arbitrary-visit";

// One, 44, 45 and no days apart, and 180 or 181, which is on either side of how far a course reaches.
const days = fc.constantFrom(
  ["2024-06-30", "2024-07-01"],
  ["2024-07-01", "2024-08-14"],
  ["2024-06-30", "2024-08-14"],
  ["2024-08-14", "2024-08-14"],
  ["2024-01-02", "2024-06-30"],
  ["2024-01-02", "2024-07-01"],
  ["2024-02-16", "2024-08-14"],
  ["2024-02-15", "2024-08-14"],
);

const cases = fc.constantFrom(
  [undefined, undefined],
  [undefined, undefined],
  ["K-1", "K-1"],
  ["K-1", "K-1"],
  ["K-1", "K-2"],
  ["K-1", undefined],
);

/** Two visits of one tooth, with a canal in common that is mostly filled at the second. */
export const courseDraft: fc.Arbitrary<VisitDraft[]> = fc
  .record({
    first: visitDraft,
    second: visitDraft,
    days,
    cases,
    filled: fc.constantFrom(true, true, true, false, undefined),
  })
  .map(({ first, second, days: [earlier = "", later = ""], cases: [one, other], filled }) => {
    const { patient, tooth } = first.session;
    return [
      { ...first, session: { ...first.session, case_id: one, started_at: on(earlier, first) } },
      {
        ...second,
        place: first.place,
        session: {
          ...second.session,
          patient,
          tooth,
          case_id: other,
          // Of its own, so that it is not taken for the first one.
          session_id: `${second.session.session_id}-2`,
          started_at: on(later, second),
          treatment: "primary",
          outcome: "completed",
        },
        canals: withCanal(second, first.canals[0]?.row.canal, filled),
      },
    ];
  });

function on(day: string, { session }: VisitDraft): string {
  return `${day}${String(session.started_at).slice(day.length)}`;
}

/** The first of the canals takes the name, and no other has it. */
function withCanal(
  { canals }: VisitDraft,
  name: unknown,
  filled: boolean | undefined,
): VisitDraft["canals"] {
  const [canal, ...others] = canals;
  if (!canal || name === undefined) return canals;
  const row = { ...canal.row, canal: String(name), filled };
  return [{ ...canal, row }, ...others.filter((other) => other.row.canal !== name)];
}
