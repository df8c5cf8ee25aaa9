/** SQL: the verdicts of lib/store/import/judge by which a row is held. */
export const heldVerdicts =
  "('waiting', 'contradiction', 'several-practices', 'several-visits', 'outside-reach')";
