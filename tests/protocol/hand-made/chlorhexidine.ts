import type { Values } from "@/lib/records/column";
import { visit } from "../../plain/hand-made";
import { canal, delivery, exception, type HandMadeCase, held, wholeTooth } from "./hand-made-case";

// Worked by hand: at every change from hypochlorite to chlorhexidine or back, saline or water must lie in between.

const criterion = "no-hypochlorite-chlorhexidine-contact";

/** One canal's irrigants, one after the other by seq. */
function inOneCanal(says: string, irrigants: readonly string[], outcome: string): HandMadeCase {
  return {
    says: `${irrigants.join(", ")}: ${says}`,
    criterion,
    records: {
      sessions: [visit("V-1")],
      canals: [canal("MB")],
      irrigation: irrigants.map((irrigant, place) => delivery("MB", place + 1, irrigant)),
    },
    outcomes: { "V-1": outcome },
  };
}

/** Deliveries of a visit with three canals. */
function ofVisit(
  says: string,
  irrigation: Values[],
  outcome: string,
  others: Partial<HandMadeCase["records"]> = {},
): HandMadeCase {
  return {
    says,
    criterion,
    records: {
      sessions: [visit("V-1")],
      canals: [canal("MB1"), canal("MB2"), canal("ML")],
      irrigation,
      ...others,
    },
    outcomes: { "V-1": outcome },
  };
}
const at = (minute: string) => ({ started_at: `2024-08-14T09:${minute}:00.000Z` });

/** Hypochlorite and chlorhexidine. */
export const cases: readonly HandMadeCase[] = [
  inOneCanal("saline in between", ["naocl", "saline", "chx"], "met"),
  inOneCanal("water in between", ["naocl", "water", "chx"], "met"),
  inOneCanal("they meet", ["naocl", "chx"], "not met"),
  inOneCanal("they meet the other way round", ["chx", "naocl"], "not met"),
  inOneCanal("EDTA is no neutral rinse", ["naocl", "edta", "chx"], "not met"),
  inOneCanal("one rinse among others is enough", ["naocl", "edta", "saline", "edta", "chx"], "met"),
  inOneCanal("they meet at the second change", ["naocl", "saline", "chx", "naocl"], "not met"),
  inOneCanal("a rinse at every change", ["naocl", "saline", "chx", "water", "naocl"], "met"),
  inOneCanal(
    "a rinse before or after is none between",
    ["saline", "naocl", "chx", "saline"],
    "not met",
  ),
  inOneCanal("no chlorhexidine", ["naocl", "saline", "edta"], "not counted"),
  inOneCanal("no hypochlorite", ["chx", "saline"], "not counted"),
  ofVisit(
    "seq says what came first, not the order of rows",
    [delivery("MB1", 3, "chx"), delivery("MB1", 1, "naocl"), delivery("MB1", 2, "saline")],
    "met",
  ),
  ofVisit(
    "without times each canal is looked at by itself: what met in another order is not seen",
    [delivery("MB1", 1, "naocl"), delivery("ML", 1, "chx")],
    "met",
  ),
  ofVisit(
    "one canal of several is enough for a miss",
    [
      delivery("MB1", 1, "naocl"),
      delivery("MB1", 2, "saline"),
      delivery("MB1", 3, "chx"),
      delivery("ML", 1, "naocl"),
      delivery("ML", 2, "chx"),
    ],
    "not met",
  ),
  ofVisit(
    "timed: hypochlorite in one canal, then chlorhexidine in the next",
    [delivery("MB1", 1, "naocl", at("10")), delivery("ML", 1, "chx", at("15"))],
    "not met",
  ),
  ofVisit(
    "timed: saline in any canal in between",
    [
      delivery("MB1", 1, "naocl", at("10")),
      delivery("MB2", 1, "saline", at("12")),
      delivery("ML", 1, "chx", at("15")),
    ],
    "met",
  ),
  ofVisit(
    "timed: the clock goes before seq",
    [
      delivery("MB1", 1, "naocl", at("10")),
      delivery("MB1", 2, "saline", at("20")),
      delivery("MB1", 3, "chx", at("15")),
    ],
    "not met",
  ),
  ofVisit(
    "timed alike: by canal, then seq",
    [
      delivery("ML", 1, "chx", at("10")),
      delivery("MB2", 1, "saline", at("10")),
      delivery("MB1", 1, "naocl", at("10")),
    ],
    "met",
  ),
  ofVisit(
    "one delivery without a time: each canal by itself",
    [
      delivery("MB1", 1, "naocl", at("10")),
      delivery("ML", 1, "chx", at("15")),
      delivery("MB2", 1, "edta"),
    ],
    "met",
  ),
  ofVisit(
    "saline noted for the whole tooth: nobody knows when",
    [delivery("MB1", 1, "naocl"), delivery("MB1", 2, "chx"), wholeTooth(1, "saline")],
    "not recorded",
  ),
  ofVisit(
    "hypochlorite noted for the whole tooth: nobody knows when",
    [delivery("MB1", 1, "saline"), delivery("MB1", 2, "chx"), wholeTooth(1, "naocl")],
    "not recorded",
  ),
  ofVisit(
    "hypochlorite noted for the whole tooth does not undo a contact that is known",
    [delivery("MB1", 1, "naocl"), delivery("MB1", 2, "chx"), wholeTooth(1, "naocl")],
    "not met",
  ),
  ofVisit(
    "EDTA noted for the whole tooth neither parts nor joins them",
    [
      delivery("MB1", 1, "naocl"),
      delivery("MB1", 2, "saline"),
      delivery("MB1", 3, "chx"),
      wholeTooth(1, "edta"),
    ],
    "met",
  ),
  ofVisit(
    "all timed, the whole tooth too: then its place is known",
    [
      delivery("MB1", 1, "naocl", at("10")),
      wholeTooth(1, "saline", at("12")),
      delivery("MB1", 2, "chx", at("15")),
    ],
    "met",
  ),
  ofVisit(
    "only whole-tooth notes: they follow each other by seq",
    [wholeTooth(1, "naocl"), wholeTooth(2, "saline"), wholeTooth(3, "chx")],
    "met",
  ),
  ofVisit(
    "only whole-tooth notes, and they meet",
    [wholeTooth(1, "naocl"), wholeTooth(2, "chx")],
    "not met",
  ),
  ofVisit(
    "a held delivery may have been a rinse, or met something",
    [delivery("MB1", 1, "naocl"), delivery("MB1", 2, "saline"), delivery("MB1", 3, "chx")],
    "not recorded",
    { held: [held("irrigation")] },
  ),
  ofVisit(
    "every visit counts, and nothing excuses a contact",
    [delivery("MB1", 1, "naocl"), delivery("MB1", 2, "chx")],
    "not met",
    {
      sessions: [visit("V-1", { treatment: "emergency", outcome: "abandoned" })],
      exceptions: [exception(criterion, "other")],
    },
  ),
];
