import type { TableName } from "@/lib/records/tables";
import type { Row, Rows } from "./rows";

/** A cell, or a few, of the nth row of a table spoilt the way people and machines do. */
type Spoilt = readonly [table: TableName, place: number, cells: Row];

/**
 * What is wrong in the files of each practice. A place beyond the last row is passed over, so that a demo that
 * starts early in the scenario has less of it.
 */
const spoilt: Readonly<Record<string, readonly Spoilt[]>> = {
  MEDLAR: [
    ["irrigation", 2411, { volume_ml: -12.4 }],
    ["irrigation", 7333, { started_at: "2062-04-11T09:40:00Z" }],
    ["instruments", 1502, { separated: "perhaps" }],
    ["instruments", 3970, { taper_pct: "six" }],
    ["canals", 1210, { working_length_mm: 215 }],
    ["canals", 2305, { curvature_deg: "severe" }],
    ["steps", 2600, { status: "excepted", reason: undefined }],
    ["upkeep", 911, { duration_s: "45 s" }],
    ["upkeep", 3001, { day: "14/05/2026" }],
  ],
  QUINCE: [
    ["irrigation", 702, { irrigant: "hypoclorite" }],
    ["irrigation", 2950, { irrigant: "hypoclorite" }],
    ["irrigation", 5107, { irrigant: "NaOCl 3%" }],
    ["irrigation", 4021, { duration_s: "2:30" }],
    ["canals", 640, { length_method: "apex" }],
    ["canals", 1777, { canal: "MB-palatal" }],
    ["instruments", 2204, { size: 250 }],
    ["steps", 1300, { status: "ok" }],
    ["upkeep", 802, { status: "yes" }],
    ["incidents", 3, { kind: "other" }],
  ],
  SPINDLE: [
    ["irrigation", 1204, { volume_ml: "10,5" }],
    ["irrigation", 1209, { volume_ml: "11,5" }],
    ["irrigation", 4410, { volume_ml: -3 }],
    ["irrigation", 5301, { concentration_pct: 300 }],
    ["canals", 1904, { preparation: "rotative" }],
    ["instruments", 4100, { use_number: 0 }],
    ["upkeep", 300, { day: "2025-02-30" }],
  ],
};

/** Spoils the rows of a practice in place, and adds visits that cannot have been as they are written. */
export function addMess(practice: string, rows: Rows, until: string): void {
  for (const [table, place, cells] of spoilt[practice] ?? []) {
    const row = rows[table][place];
    if (row) rows[table][place] = { ...row, ...cells };
  }
  if (practice === "MEDLAR") {
    loseClinician(rows);
    addImpossibleVisits(rows, until);
    reviveInstrument(rows);
  }
  if (practice === "SPINDLE") misnameVisit(rows);
}

/** A visit without its clinician: its canals and what was done in them wait for it. */
function loseClinician(rows: Rows): void {
  const canals = new Map<string, number>();
  for (const { session_id } of rows.canals) {
    canals.set(String(session_id), (canals.get(String(session_id)) ?? 0) + 1);
  }
  const place = rows.sessions.findIndex(
    ({ session_id }, index) => index >= 700 && canals.get(String(session_id)) === 1,
  );
  const row = rows.sessions[place];
  if (row) rows.sessions[place] = { ...row, clinician: undefined };
}

/** Visits from a computer whose clock was wrong, and from mistyping; nothing hangs on them. */
function addImpossibleVisits(rows: Rows, until: string): void {
  const visit = {
    practice: "MEDLAR",
    chair: "MEDLAR-3",
    clinician: "M-02",
    patient: "medlar-pt-31",
    tooth: "24",
    tooth_notation: "fdi",
    treatment: "emergency",
    outcome: "completed",
  };
  const impossible: Row[] = [
    // The clocks went from 01:00 to 02:00 that night.
    { session_id: "MV-0901x", started_at: "2025-03-30T01:20:00" },
    // The hour from 01:00 to 02:00 came twice that night.
    { session_id: "MV-0902x", started_at: "2025-10-26T01:40:00" },
    { session_id: "MV-0903x", started_at: "2062-02-03T09:15:00" },
    { session_id: "MV-0904x", started_at: "2025-04-02T11:10:00", ended_at: "2025-04-02T10:35:00" },
    { session_id: "MV-0905x", started_at: "2025-05-06T09:30:00", tooth: "49" },
    { session_id: "MV-0906x", started_at: "2025-05-07T14:00:00", tooth_notation: undefined },
  ];
  for (const row of impossible) {
    const day = String(row.started_at).slice(0, 10);
    if (day <= until || day > "2060") rows.sessions.push({ ...visit, ...row });
  }
}

/** The log of a later visit names an instrument that had separated before. */
function reviveInstrument(rows: Rows): void {
  const broken = rows.instruments.findIndex((row) => row.separated === "yes" && row.instrument_id);
  const id = rows.instruments[broken]?.instrument_id;
  const visit = rows.instruments[broken]?.session_id;
  const later = rows.instruments.findIndex(
    (row, place) => place > broken + 40 && row.kind === "oscillating" && row.session_id !== visit,
  );
  const row = rows.instruments[later];
  if (row) rows.instruments[later] = { ...row, instrument_id: id };
}

/** A canal whose visit's number was mistyped: the visit is not known. */
function misnameVisit(rows: Rows): void {
  const place = rows.canals.findIndex(
    ({ canal, apex }, index) => index > 900 && canal === "main" && apex,
  );
  const row = rows.canals[place];
  if (row) rows.canals[place] = { ...row, session_id: `${row.session_id}O` };
}
