import type { TableName } from "@/lib/records/tables";

/** Which fields of a table are looked for among the columns, in this order: the first takes a column that fits several. */
export const fieldsLookedFor: Readonly<Partial<Record<TableName, readonly string[]>>> = {
  sessions: [
    ...["session_id", "practice", "chair", "clinician", "patient", "tooth", "ended_at"],
    ...["started_at", "outcome", "difficulty", "treatment"],
  ],
  canals: [
    ...["session_id", "practice", "canal", "working_length_mm", "length_method"],
    ...["curvature_deg", "apical_size", "preparation_s", "preparation", "timer_reset", "filled"],
  ],
  irrigation: [
    ...["session_id", "practice", "canal", "irrigant", "concentration_pct", "flow_ml_min"],
    ...["activation_s", "dwell_s", "duration_s", "volume_ml", "activation", "delivery", "seq"],
  ],
  instruments: [
    ...["session_id", "practice", "canal", "uses", "separated", "speed_per_min", "torque_n_cm"],
    ...["taper_pct", "size", "lot", "seq"],
  ],
  upkeep: ["practice", "chair", "device", "task", "status", "duration_s", "day", "done_by"],
};

/** A table is taken to be in a file where all of one of these sets of fields are. */
export const fieldsThatTell: Readonly<Partial<Record<TableName, readonly (readonly string[])[]>>> =
  {
    sessions: [["patient"], ["session_id", "tooth", "clinician"]],
    canals: [["working_length_mm"], ["preparation"], ["timer_reset"], ["filled"]],
    irrigation: [["irrigant"]],
    instruments: [["uses"], ["separated"]],
    upkeep: [["task", "chair"]],
  };

/** Fields of the visit: a column that feeds one of them feeds nothing else, as "Tooth no" is no running number. */
export const fieldsOfVisitAlone = ["chair", "clinician", "patient", "tooth"] as const;
