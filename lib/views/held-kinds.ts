/** Why rows are held, in words. */
export const heldKinds: Readonly<Record<string, string>> = {
  check: "a value is missing or cannot be right",
  waiting: "what it belongs to is not there yet",
  contradiction: "contradicts an accepted row",
  "several-practices": "two practices know the visit",
  "several-visits": "more than one visit was there at that time",
  "outside-reach": "of a practice that is not the sender's",
  "after-separation": "used after the instrument separated",
};
