import { createHmac } from "node:crypto";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readSheets } from "@/lib/intake/read-sheets";
import type { Context, GoodRow, HeldRow, Sheet } from "@/lib/intake/sheet";

export const context: Context = {
  zoneOf: (practice) => (practice === "NOWHERE" ? undefined : "Europe/London"),
  pseudonym: (practice, reference) =>
    createHmac("sha256", "a test's key").update(`${practice}\0${reference}`).digest("hex"),
  now: new Date("2026-11-25T12:00:00Z"),
};

export type ReadSheet = Omit<Sheet, "rows"> & { rows: (GoodRow | HeldRow)[] };

/** Writes the content to a file of that name and reads all of it. */
export async function readAll(
  name: string,
  content: string | Uint8Array,
  around: Context = context,
): Promise<ReadSheet[]> {
  const folder = await mkdtemp(join(tmpdir(), "canal-audit-intake-"));
  const path = join(folder, "file");
  try {
    await writeFile(path, content);
    return await readPath(path, name, around);
  } finally {
    await rm(folder, { recursive: true });
  }
}

export async function readPath(
  path: string,
  name: string,
  around: Context = context,
): Promise<ReadSheet[]> {
  const sheets: ReadSheet[] = [];
  for await (const { rows, ...sheet } of readSheets(path, name, around)) {
    const read: (GoodRow | HeldRow)[] = [];
    for await (const row of rows) read.push(row);
    sheets.push({ ...sheet, rows: read });
  }
  return sheets;
}

/** The rows of a file with one table. */
export async function rowsIn(
  name: string,
  content: string | Uint8Array,
): Promise<(GoodRow | HeldRow)[]> {
  const sheets = await readAll(name, content);
  if (sheets.length !== 1 || !sheets[0]) throw new Error(`${sheets.length} sheets`);
  return sheets[0].rows;
}

/** "good" or the sentences of a held row. */
export function outcome(row: GoodRow | HeldRow | undefined): string {
  if (!row) return "no row";
  return row.verdict === "good" ? "good" : row.reasons.map((reason) => reason.sentence).join(" ");
}

/** Rows that are right, each with every column the tests need. */
export const right = {
  sessions: {
    session_id: "V-1",
    practice: "NORTH",
    chair: "NORTH-2",
    clinician: "C07",
    patient: "reference-118",
    started_at: "2026-07-03T09:10:00+01:00",
    ended_at: "2026-07-03T10:05:00+01:00",
    tooth: "26",
    tooth_notation: "fdi",
    treatment: "primary",
    outcome: "completed",
  },
  canals: { session_id: "V-1", canal: "MB1", preparation: "rotary" },
  irrigation: {
    session_id: "V-1",
    canal: "MB1",
    seq: "1",
    irrigant: "naocl",
    volume_ml: "4.5",
    delivery: "syringe",
  },
  instruments: { session_id: "V-1", canal: "MB1", seq: "1", kind: "rotary" },
  steps: { session_id: "V-1", canal: "", step: "dam", status: "done" },
  people: { person: "person-7", practice: "NORTH", code: "C07", from: "2025-04-01" },
  followups: { session_id: "V-1", canal: "MB1", seq: "1", day: "2026-08-14" },
} satisfies Record<string, Record<string, string>>;
