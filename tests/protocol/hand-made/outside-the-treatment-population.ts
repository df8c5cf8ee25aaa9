import { visit } from "../../plain/hand-made";
import { canal, type HandMadeCase } from "./hand-made-case";

// Worked by hand: what is abandoned, or no root canal treatment, or not prepared, is left out of the criteria of
// canals, under the first reason that applies.

const sessions = [
  visit("V-1", { outcome: "abandoned", treatment: "emergency" }),
  visit("V-2", { treatment: "emergency" }),
  visit("V-3", { treatment: "dressing" }),
  visit("V-4", { treatment: "other" }),
  visit("V-5"),
];
const irrigated = ["V-1", "V-2", "V-3", "V-4", "V-5"].flatMap((session_id) =>
  ["naocl", "edta"].map((irrigant, place) => ({
    session_id,
    canal: "main",
    seq: place,
    irrigant,
    delivery: "syringe",
  })),
);
const treated = ["V-1", "V-2", "V-3", "V-4"].map((session_id) =>
  canal("main", { session_id, filled: true }),
);
const outcomes = {
  "V-1/main": "excluded: abandoned",
  "V-2/main": "excluded: emergency",
  "V-3/main": "excluded: dressing",
  "V-4/main": "excluded: other",
};

/** Canals outside the treatment population, for each criterion that asks for it. */
export const cases: readonly HandMadeCase[] = [
  ...[
    "length-recorded",
    "main-irrigant",
    "hypochlorite-floor",
    "chelator",
    "rinse-after-chelator",
    "tip-depth",
    "activation",
    "timer-reset",
  ].map((criterion) => ({
    says: "abandoned, emergency, dressing, another treatment, and a canal that was not prepared",
    criterion,
    records: {
      sessions,
      canals: [...treated, canal("main", { session_id: "V-5", preparation: "none", filled: true })],
      irrigation: irrigated,
    },
    outcomes: { ...outcomes, "V-5/main": "excluded: not-prepared" },
  })),
  ...["length-confirmed", "patency"].map((criterion) => ({
    says: "a canal that was not prepared, or by hand, was not prepared by a motor: it is no unit",
    criterion,
    records: {
      sessions: [...sessions, visit("V-6")],
      canals: [
        ...treated,
        canal("main", { session_id: "V-5", preparation: "none" }),
        canal("main", { session_id: "V-6", preparation: "hand" }),
      ],
      irrigation: irrigated,
    },
    outcomes: { ...outcomes, "V-5/main": "not counted", "V-6/main": "not counted" },
  })),
  ...["length-confirmed", "hypochlorite-floor", "chelator"].map((criterion) => ({
    says: "primary teeth and canals with an open apex are left out",
    criterion,
    records: {
      sessions: [
        visit("V-1", { tooth: "85" }),
        visit("V-2", { tooth: "21" }),
        visit("V-3", { tooth: "85", treatment: "dressing" }),
        visit("V-4", { tooth: "51" }),
      ],
      canals: [
        canal("D", { filled: true, length_method: "locator" }),
        canal("main", { session_id: "V-2", filled: true, length_method: "locator", apex: "open" }),
        canal("D", { session_id: "V-3", filled: true }),
        // Both: counted once, as a primary tooth.
        canal("main", { session_id: "V-4", filled: true, apex: "open" }),
      ],
    },
    outcomes: {
      "V-1/D": "excluded: primary-tooth",
      "V-2/main": "excluded: open-apex",
      "V-3/D": "excluded: dressing",
      "V-4/main": "excluded: primary-tooth",
    },
  })),
];
