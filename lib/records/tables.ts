import { criterionIds } from "./criterion-id";
import type { Column } from "./column";
import { toothNotations } from "./tooth";

/**
 * The ten tables of the record format. This is the single source: the checks, the storage of rows, the
 * blank templates and the description of every column are made from it.
 */
export const tableNames = [
  "people",
  "sessions",
  "canals",
  "irrigation",
  "instruments",
  "followups",
  "steps",
  "exceptions",
  "incidents",
  "upkeep",
] as const;
export type TableName = (typeof tableNames)[number];

export type Table = {
  readonly name: TableName;
  /** What one row is. */
  readonly says: string;
  /** The table whose row must be there first; none for those that stand alone. */
  readonly parent?: TableName;
  readonly columns: readonly Column[];
};

const practice: Column = {
  name: "practice",
  type: "code",
  says: "Code of the practice; where it is empty the visit's practice is taken.",
  example: "NORTH",
};
const session: Column = {
  name: "session_id",
  type: "code",
  required: true,
  key: true,
  says: "The visit, by its number in the practice.",
  example: "V-2041",
};
const canal: Column = {
  name: "canal",
  type: "canal",
  required: true,
  key: true,
  says: "The canal, by the trade's name, or unknown-1 where a machine does not know.",
  example: "MB1",
};
const anyCanal: Column = {
  ...canal,
  required: false,
  says: "The canal; empty where the row is about the whole tooth.",
};
const seq: Column = {
  name: "seq",
  type: "whole",
  required: true,
  key: true,
  least: 0,
  most: 1_000_000,
  says: "The order within the canal.",
  example: "1",
};
const management: Column = {
  name: "management",
  type: "choice",
  choices: ["retrieved", "bypassed", "retained", "referred", "pending"],
  says: "What became of the separated part.",
  example: "bypassed",
};
const patientTold: Column = {
  name: "patient_told",
  type: "flag",
  says: "Was the patient told.",
  example: "yes",
};
const taper: Column = {
  name: "taper_pct",
  type: "number",
  least: 0,
  most: 20,
  unit: "%",
  says: "Taper in per cent (ISO 3630-1).",
  example: "6",
};

export const tables: Readonly<Record<TableName, Table>> = {
  people: {
    name: "people",
    says: "Who a clinician's code is, from one day to another.",
    columns: [
      { name: "person", type: "code", required: true, key: true, says: "One name for the person wherever they work.", example: "person-7" },
      { ...practice, required: true, key: true, says: "Code of the practice." },
      { name: "code", type: "code", required: true, key: true, says: "The clinician's code there.", example: "C07" },
      { name: "from", type: "day", required: true, key: true, says: "First day the code is theirs.", example: "2025-04-01" },
      { name: "to", type: "day", says: "Last day the code is theirs; empty while it still is.", example: "2026-03-31" },
      { name: "peers", type: "choice", choices: ["generalist", "specialist", "trainee"], says: "Whom the person is compared with.", example: "generalist" },
    ],
  },
  sessions: {
    name: "sessions",
    says: "One tooth at one visit; two teeth are two rows.",
    columns: [
      { ...session, says: "Number of the visit, unique in its practice." },
      { ...practice, required: true, key: true, says: "Code of the practice." },
      { name: "chair", type: "code", required: true, says: "Code of the chair.", example: "NORTH-2" },
      { name: "clinician", type: "code", required: true, says: "Code of the clinician who treated.", example: "C07" },
      { name: "supervisor", type: "code", says: "Code of the supervising clinician; the work stays the trainee's.", example: "C01" },
      { name: "patient", type: "patient", required: true, says: "Any stable reference; replaced by a keyed hash before anything is written.", example: "reference-118" },
      { name: "case_id", type: "code", says: "Joins the visits of one course of treatment.", example: "K-310" },
      { name: "started_at", type: "instant", required: true, says: "When the visit started.", example: "2026-07-03T09:10:00+01:00" },
      { name: "ended_at", type: "instant", says: "When it ended.", example: "2026-07-03T10:05:00+01:00" },
      { name: "tooth", type: "tooth", required: true, says: "The tooth, in the notation named beside it.", example: "26" },
      { name: "tooth_notation", type: "choice", required: true, choices: toothNotations, says: "fdi (ISO 3950), universal, or palmer in its text form; never guessed.", example: "fdi" },
      { name: "treatment", type: "choice", required: true, choices: ["primary", "retreatment", "emergency", "dressing", "other"], says: "What was done; primary is first treatment.", example: "primary" },
      { name: "pulp", type: "choice", choices: ["vital", "necrotic", "treated", "unknown"], says: "State of the pulp on arrival.", example: "necrotic" },
      { name: "difficulty", type: "choice", choices: ["low", "moderate", "high"], says: "Difficulty as graded by the practice.", example: "moderate" },
      { name: "outcome", type: "choice", required: true, choices: ["completed", "continuing", "abandoned"], says: "How the visit ended.", example: "completed" },
    ],
  },
  canals: {
    name: "canals",
    says: "One canal at one visit.",
    parent: "sessions",
    columns: [
      session,
      canal,
      practice,
      { name: "clinician", type: "code", says: "Code of the clinician, where it differs from the visit's.", example: "C07" },
      { name: "working_length_mm", type: "number", least: 5, most: 40, unit: "mm", says: "Working length.", example: "20.5" },
      { name: "length_method", type: "choice", choices: ["locator", "radiograph", "both", "estimate"], says: "How the length was found.", example: "locator" },
      { name: "curvature_deg", type: "number", least: 0, most: 120, unit: "deg", says: "Curvature by Schneider's angle.", example: "25" },
      { name: "apex", type: "choice", choices: ["closed", "open"], says: "State of the apex.", example: "closed" },
      { name: "preparation", type: "choice", required: true, choices: ["oscillating", "rotary", "reciprocating", "hand", "none"], says: "How the canal was prepared.", example: "rotary" },
      { name: "device", type: "code", says: "Which motor.", example: "M2" },
      { name: "apical_size", type: "whole", least: 6, most: 140, unit: "10.um", says: "Apical size in 1/100 mm (ISO 3630-1).", example: "30" },
      taper,
      { name: "preparation_s", type: "number", least: 0, most: 14_400, unit: "s", says: "Time of preparation in this canal.", example: "180" },
      { name: "timer_reset", type: "choice", choices: ["yes", "no", "no-timer"], says: "Was the timer started afresh for this canal.", example: "yes" },
      { name: "filled", type: "flag", says: "Was the canal filled at this visit.", example: "yes" },
      { name: "fragment_on_arrival", type: "flag", says: "Was a separated part there before treatment.", example: "no" },
    ],
  },
  irrigation: {
    name: "irrigation",
    says: "One delivery of an irrigant.",
    parent: "canals",
    columns: [
      session,
      { ...anyCanal, says: "The canal; empty where the delivery was written down for the whole tooth." },
      seq,
      practice,
      { name: "started_at", type: "instant", says: "When the delivery started.", example: "2026-07-03T09:32:00+01:00" },
      { name: "irrigant", type: "choice", required: true, choices: ["naocl", "edta", "chx", "citric-acid", "hedp", "saline", "water", "other"], says: "What was delivered; naocl is hypochlorite, chx chlorhexidine.", example: "naocl" },
      { name: "concentration_pct", type: "number", least: 0, most: 30, unit: "%", says: "Strength.", example: "3" },
      { name: "volume_ml", type: "number", least: 0, most: 100, unit: "mL", says: "Volume delivered.", example: "4.5" },
      { name: "flow_ml_min", type: "number", over: 0, most: 60, unit: "mL/min", says: "Flow.", example: "6" },
      { name: "duration_s", type: "number", least: 0, most: 3600, unit: "s", says: "Time the irrigant flowed.", example: "45" },
      { name: "dwell_s", type: "number", least: 0, most: 3600, unit: "s", says: "Time it was left in place.", example: "60" },
      { name: "basis", type: "choice", choices: ["metered", "timer", "noted"], says: "Where the numbers come from: pump or motor log, read off a timer, or noted by hand.", example: "metered" },
      { name: "delivery", type: "choice", required: true, choices: ["continuous", "syringe", "negative-pressure"], says: "How it was delivered; continuous is while the file works.", example: "syringe" },
      { name: "activation", type: "choice", choices: ["none", "sonic", "ultrasonic", "manual", "other"], says: "How it was activated.", example: "ultrasonic" },
      { name: "activation_s", type: "number", least: 0, most: 3600, unit: "s", says: "Time of activation; part of the dwell unless stated.", example: "20" },
      { name: "tip_short_mm", type: "number", least: -5, most: 30, unit: "mm", says: "How far the tip stayed short of working length.", example: "2" },
    ],
  },
  instruments: {
    name: "instruments",
    says: "One use of an instrument in a canal.",
    parent: "canals",
    columns: [
      session,
      canal,
      seq,
      practice,
      { name: "kind", type: "choice", required: true, choices: ["oscillating", "rotary", "reciprocating", "hand"], says: "Kind of instrument.", example: "rotary" },
      { name: "instrument_id", type: "code", says: "One physical instrument.", example: "i-5512" },
      { name: "uses", type: "whole", least: 1, most: 1000, says: "How many uses the row stands for; 1 when empty.", example: "1" },
      { name: "size", type: "whole", least: 6, most: 140, unit: "10.um", says: "Tip size in 1/100 mm (ISO 3630-1).", example: "25" },
      taper,
      { name: "lot", type: "code", says: "Lot number.", example: "L-88" },
      { name: "steriliser_cycle", type: "code", says: "Steriliser cycle before this use.", example: "A-1204" },
      { name: "single_use", type: "flag", says: "Is the instrument for single use.", example: "no" },
      { name: "use_number", type: "whole", least: 1, most: 1000, says: "Which patient it is used for; 1 is the first.", example: "1" },
      { name: "speed_per_min", type: "number", over: 0, most: 50_000, unit: "/min", says: "Speed set.", example: "350" },
      { name: "torque_n_cm", type: "number", over: 0, most: 20, unit: "N.cm", says: "Torque set.", example: "2" },
      { name: "separated", type: "count", least: 0, most: 1000, says: "Did it separate: yes or no; where the row stands for several uses, how many of them.", example: "no" },
      { name: "third", type: "choice", choices: ["coronal", "middle", "apical", "beyond"], says: "Third of the canal where the part lies.", example: "apical" },
      { name: "fragment_mm", type: "number", over: 0, most: 25, unit: "mm", says: "Length of the separated part.", example: "3" },
      management,
      patientTold,
    ],
  },
  followups: {
    name: "followups",
    says: "What became of a separation later.",
    parent: "instruments",
    columns: [
      session,
      canal,
      seq,
      { name: "day", type: "day", required: true, key: true, says: "Day it was recorded.", example: "2026-08-14" },
      practice,
      management,
      patientTold,
    ],
  },
  steps: {
    name: "steps",
    says: "A step of the protocol at a visit, or in one canal.",
    parent: "sessions",
    columns: [
      session,
      { ...anyCanal, says: "The canal; empty where the step belongs to the visit. A canal's step goes before the visit's." },
      {
        name: "step",
        type: "choice",
        required: true,
        key: true,
        choices: [
          "consent", "dam", "length-radiograph", "apex-locator", "patency", "glide-path", "filling-removed",
          "torque-calibration", "line-check", "instrument-inspection", "handpiece-care", "final-rinse",
        ],
        says: "The step.",
        example: "dam",
      },
      practice,
      { name: "status", type: "choice", required: true, choices: ["done", "not-done", "not-applicable", "excepted"], says: "What became of it.", example: "done" },
      { name: "reason", type: "code", says: "Why it was excepted, by its code; required then.", example: "not-possible" },
      { name: "at", type: "instant", says: "When.", example: "2026-07-03T09:15:00+01:00" },
    ],
  },
  exceptions: {
    name: "exceptions",
    says: "Why a criterion was rightly not met.",
    parent: "sessions",
    columns: [
      session,
      anyCanal,
      { name: "criterion", type: "choice", required: true, key: true, choices: criterionIds, says: "The criterion, by its id.", example: "timer-reset" },
      practice,
      { name: "reason", type: "code", required: true, says: "The reason, by its code.", example: "equipment-failure" },
      { name: "entered_by", type: "code", says: "Code of the clinician who entered it.", example: "C07" },
      { name: "entered_at", type: "instant", says: "When it was entered.", example: "2026-07-03T10:20:00+01:00" },
    ],
  },
  incidents: {
    name: "incidents",
    says: "Something that went wrong at a visit.",
    parent: "sessions",
    columns: [
      session,
      { name: "kind", type: "choice", required: true, key: true, choices: ["extrusion", "perforation", "swallowed-or-inhaled", "wrong-tooth", "allergy"], says: "What happened.", example: "extrusion" },
      practice,
      { name: "found_at", type: "instant", says: "When it was found.", example: "2026-07-03T09:50:00+01:00" },
      patientTold,
      { name: "reported", type: "flag", says: "Was it reported.", example: "yes" },
    ],
  },
  upkeep: {
    name: "upkeep",
    says: "A task on a chair or device on a day.",
    columns: [
      { ...practice, required: true, key: true, says: "Code of the practice." },
      { name: "chair", type: "code", required: true, key: true, says: "Code of the chair.", example: "NORTH-2" },
      { name: "device", type: "code", key: true, says: "The device, where it is one of several at the chair.", example: "M2" },
      { name: "day", type: "day", required: true, key: true, says: "Local day.", example: "2026-07-03" },
      { name: "task", type: "code", required: true, key: true, says: "line-rinse, line-dry, or the practice's own.", example: "line-rinse" },
      { name: "status", type: "choice", required: true, choices: ["done", "not-done", "out-of-service"], says: "What became of it.", example: "done" },
      { name: "duration_s", type: "number", least: 0, most: 36_000, unit: "s", says: "How long.", example: "45" },
      { name: "at", type: "instant", says: "When.", example: "2026-07-03T18:05:00+01:00" },
      { name: "done_by", type: "code", says: "Code of who did it.", example: "N03" },
    ],
  },
};
