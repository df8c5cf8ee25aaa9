import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import type { Viewer } from "@/lib/access/viewer";
import { cancelImport } from "@/lib/store/import/cancel-import";
import { importOf } from "@/lib/store/import/imports";
import { UndoRefused } from "@/lib/store/import/take-back";
import { undoImport } from "@/lib/store/import/undo-import";
import { benchRows } from "@/lib/store/mend/bench-rows";
import { practicesWithin } from "@/lib/store/records/practices";
import { type HeldLine, heldLine } from "@/lib/views/held-lines";
import { type ImportLine, importLine } from "@/lib/views/import-lines";
import { count } from "@/lib/views/quantity";
import { letUploadGo, resumeImport } from "./resume-import";

export type ImportAnswer = {
  readonly import: ImportLine;
  /** The first of its rows that are held now. */
  readonly held: readonly HeldLine[];
  readonly heldRows: string;
  readonly moreHeld: boolean;
};

/** How many held rows the answer lists; the others are one link away. */
const heldListed = 30;

/** What became of an import; null where there is none of that number. @throws Refused */
export async function importAnswer(viewer: Viewer, importId: number): Promise<ImportAnswer | null> {
  const reach = recordsReach(viewer);
  const found =
    Number.isSafeInteger(importId) && importId < 2 ** 31 ? await importOf(reach, importId) : null;
  if (!found) return null;
  const [held, practices] = await Promise.all([
    benchRows(reach, { importId, state: "held", limit: heldListed, offset: 0 }),
    practicesWithin(reach),
  ]);
  return {
    import: importLine(found, practices[0]?.zone ?? "UTC"),
    held: held.rows.map(heldLine),
    heldRows: count(held.count),
    moreHeld: held.count > held.rows.length,
  };
}

/** Takes an import back, or says in a sentence why not. @throws Refused */
export async function takeImportBack(
  reach: RecordsReach,
  importId: number,
): Promise<{ done: string } | { wrong: { form: string } }> {
  try {
    await undoImport(reach, importId);
    return { done: "The import is undone; every figure is as if it had not been." };
  } catch (error) {
    if (error instanceof UndoRefused || error instanceof Refused)
      return { wrong: { form: error.message } };
    throw error;
  }
}

/** Ends an import that runs; nothing of it is kept. @throws Refused */
export async function endImport(
  reach: RecordsReach,
  importId: number,
): Promise<{ done: string } | { wrong: { form: string } }> {
  return (await cancelImport(reach, importId))
    ? { done: "The import is being cancelled; nothing of it is kept." }
    : { wrong: { form: "It runs no longer." } };
}

/** Goes on with an import that was broken off, or lets its files go. @throws Refused */
export async function goOnWithImport(
  reach: RecordsReach,
  importId: number,
  how: "go on" | "let go",
): Promise<{ done: string } | { wrong: { form: string } }> {
  if (how === "let go") {
    await letUploadGo(reach, importId);
    return { done: "Its files are deleted." };
  }
  return (await resumeImport(reach, importId))
    ? { done: "It goes on." }
    : { wrong: { form: "It goes on already, or its files are no longer there." } };
}
