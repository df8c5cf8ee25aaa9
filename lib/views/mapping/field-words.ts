/** A field's name as it is read: volume_ml is "Volume, mL". */
export function fieldWords(name: string): string {
  const said = ownWords[name];
  if (said) return said;
  const { bare, unit } = parted(name);
  const words = bare.replaceAll("_", " ");
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}${unit}`;
}

const ownWords: Readonly<Record<string, string>> = {
  session_id: "Number of the visit",
  case_id: "Number of the course",
  seq: "Order within the canal",
  started_at: "Beginning",
  ended_at: "End",
  at: "When",
  day: "Day",
  from: "First day",
  to: "Last day",
  peers: "Compared with",
  code: "Code of the clinician",
  person: "Name of the person for all practices",
  chair: "Chair",
  outcome: "How the visit ended",
  length_method: "How the length was found",
  basis: "Where the numbers come from",
  delivery: "How it was delivered",
  dwell_s: "Left in place, s",
  duration_s: "Time, s",
  tip_short_mm: "Tip short of working length, mm",
  timer_reset: "Timer started afresh",
  filled: "Filled at this visit",
  device: "Device",
  uses: "Uses that the row stands for",
  lot: "Lot number",
  separated: "Separated, and how many",
  third: "Third where the part lies",
  fragment_mm: "Length of the part, mm",
  management: "What became of the part",
  use_number: "Which use it is",
  status: "What became of it",
  instrument_id: "Number of the instrument",
  concentration_pct: "Strength, %",
  size: "Tip size, 1/100 mm",
  apical_size: "Apical size, 1/100 mm",
  "visit.chair": "Chair of the visit",
  "visit.at": "A moment of the visit",
  "visit.until": "End of what the row tells",
  "visit.tooth": "Tooth of the visit",
  "visit.tooth_notation": "Notation of the visit's tooth",
};

const units: readonly (readonly [ending: string, words: string])[] = [
  ["_ml_min", ", mL/min"],
  ["_per_min", ", a minute"],
  ["_n_cm", ", N·cm"],
  ["_mm", ", mm"],
  ["_ml", ", mL"],
  ["_pct", ", %"],
  ["_deg", ", degrees"],
  ["_s", ", s"],
];

function parted(name: string): { bare: string; unit: string } {
  for (const [ending, unit] of units)
    if (name.endsWith(ending)) return { bare: name.slice(0, -ending.length), unit };
  return { bare: name, unit: "" };
}
