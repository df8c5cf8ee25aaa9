import type { Values } from "@/lib/records/column";
import { visit } from "../../plain/hand-made";
import { type HandMadeCase, wholeTooth } from "./hand-made-case";

// Worked by hand from the definitions; beside each row stands what it comes to.

const days = ["01", "02", "03", "04", "05", "06", "07", "08", "09"].map((day) => `2024-08-${day}`);
const sessions = [
  // Two visits a day in chair 1, the first of them abandoned: one chair-day all the same.
  ...days.flatMap((day) => [
    visit(`A ${day}`, { started_at: `${day}T08:00:00.000Z`, outcome: "abandoned" }),
    visit(`B ${day}`, { started_at: `${day}T10:00:00.000Z` }),
  ]),
  // Chair 2 had a syringe only.
  visit("S", { chair: "2", started_at: "2024-08-01T08:00:00.000Z" }),
  // Half past midnight of 11 August in London, where summer time is an hour ahead of UTC.
  visit("N", { chair: "3", started_at: "2024-08-10T23:30:00.000Z" }),
];
const irrigation = sessions.map(({ session_id }) =>
  wholeTooth(1, "naocl", {
    session_id,
    delivery: session_id === "S" ? "syringe" : "continuous",
  }),
);
const done = (task: string, day: string, others: Values = {}): Values => ({
  practice: "NORTH",
  chair: "1",
  day: `2024-08-${day}`,
  task,
  status: "done",
  ...others,
});
const outOfService = { status: "out-of-service" };
const M1 = { device: "M1" };
const M2 = { device: "M2" };

/** Rinsing and drying the irrigation line, by chair and day. */
export const cases: readonly HandMadeCase[] = [
  {
    says: "rinsed for 30 s or longer, on every device of the chair that was in service",
    criterion: "line-rinse",
    records: {
      sessions,
      irrigation,
      upkeep: [
        done("line-rinse", "01", { duration_s: 30 }),
        done("line-rinse", "02", { duration_s: 29 }),
        done("line-rinse", "03"), // for how long?
        done("line-rinse", "04", outOfService),
        done("line-rinse", "05", { ...M1, duration_s: 40 }),
        done("line-rinse", "05", { ...M2, status: "not-done" }), // one of two
        done("line-rinse", "06", { ...M1, ...outOfService }),
        done("line-rinse", "06", M2), // the one in service: for how long?
        done("line-rinse", "07", { ...M1, ...outOfService }),
        done("line-rinse", "07", { ...M2, duration_s: 45 }), // the one in service passed
        done("line-dry", "08"), // another task
        done("line-rinse", "09", M1), // for how long? But the other was too short
        done("line-rinse", "09", { ...M2, duration_s: 10 }),
        done("line-rinse", "11", { chair: "3", duration_s: 60 }), // by the practice's own clocks
        done("line-rinse", "12", { duration_s: 60 }), // nobody was treated
      ],
    },
    outcomes: {
      "NORTH/1/2024-08-01": "met",
      "NORTH/1/2024-08-02": "not met",
      "NORTH/1/2024-08-03": "not recorded",
      "NORTH/1/2024-08-04": "excluded: out-of-service",
      "NORTH/1/2024-08-05": "not met",
      "NORTH/1/2024-08-06": "not recorded",
      "NORTH/1/2024-08-07": "met",
      "NORTH/1/2024-08-08": "not recorded",
      "NORTH/1/2024-08-09": "not met",
      "NORTH/2/2024-08-01": "not counted",
      "NORTH/3/2024-08-11": "met",
      "NORTH/1/2024-08-12": "not counted",
    },
  },
  {
    says: "dried, for however long, on every device of the chair that was in service",
    criterion: "line-dry",
    records: {
      sessions,
      irrigation,
      upkeep: [
        done("line-dry", "01"),
        done("line-dry", "02", { status: "not-done" }),
        done("line-rinse", "03", { duration_s: 60 }), // another task
        done("line-dry", "04", { ...M1, ...outOfService }),
        done("line-dry", "04", { ...M2, ...outOfService }), // both
        done("line-dry", "05", { ...M1, duration_s: 5 }),
        done("line-dry", "05", { ...M2, status: "not-done" }), // one of two
        done("line-dry", "06", { ...M1, ...outOfService }),
        done("line-dry", "06", M2), // the one in service passed
        done("line-dry", "07", { practice: "SOUTH" }), // another practice's chair 1
        done("line-dry", "08"),
        done("line-dry", "09", { ...M1, duration_s: 0 }),
        done("line-dry", "11", { chair: "3" }),
      ],
    },
    outcomes: {
      "NORTH/1/2024-08-01": "met",
      "NORTH/1/2024-08-02": "not met",
      "NORTH/1/2024-08-03": "not recorded",
      "NORTH/1/2024-08-04": "excluded: out-of-service",
      "NORTH/1/2024-08-05": "not met",
      "NORTH/1/2024-08-06": "met",
      "NORTH/1/2024-08-07": "not recorded",
      "NORTH/1/2024-08-08": "met",
      "NORTH/1/2024-08-09": "met",
      "NORTH/3/2024-08-11": "met",
    },
  },
];
