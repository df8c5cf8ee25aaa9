/** A patient's reference that must be seen nowhere. */
export const patientReference = "ref-of-nobody-4471";

const columns =
  "practice,session_id,chair,clinician,patient,started_at,tooth,tooth_notation,treatment,outcome,shoe_size";

/**
 * A small file of visits as a practice might send it: two that are right, one of them twice, three that cannot be as
 * they are written, and a column that no field takes. Practice, chair and clinician are of the demo.
 */
export const messyVisits = {
  name: "sessions.csv",
  text: [
    columns,
    visit("T-9001", { started_at: "2024-11-04T09:00:00Z" }),
    visit("T-9002", { started_at: "2024-11-04T10:30:00Z" }),
    visit("T-9002", { started_at: "2024-11-04T10:30:00Z" }),
    visit("T-9003", { started_at: "2024-11-04T11:00:00Z", tooth: "49" }),
    visit("T-9004", { started_at: "the fourth of November" }),
    visit("T-9005", { started_at: "2024-11-05T09:00:00Z", tooth_notation: "" }),
    "",
  ].join("\r\n"),
  counts: { Read: 6, Accepted: 2, Repeated: 1, Held: 3, "Let go": 0 },
  /** What is wrong with each held row, by its line in the file. */
  wrong: { 5: "tooth", 6: "started_at", 7: "tooth_notation" },
  notKept: "shoe_size",
};

function visit(id: string, cells: Record<string, string>): string {
  const row: Record<string, string> = {
    ...{
      practice: "QUINCE",
      session_id: id,
      chair: "QUINCE-1",
      clinician: "Q-11",
      patient: patientReference,
    },
    ...{
      tooth: "36",
      tooth_notation: "fdi",
      treatment: "primary",
      outcome: "completed",
      shoe_size: "41",
      ...cells,
    },
  };
  return columns
    .split(",")
    .map((column) => row[column] ?? "")
    .join(",");
}
