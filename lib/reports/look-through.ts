import type { RecordsReach } from "@/lib/access/reach";
import type { FileLayout } from "@/lib/intake/mapping/file-layout";
import { recognise } from "@/lib/intake/recognise/recognise";
import type { Recognised } from "@/lib/intake/recognise/recognised";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import { pathOfWaiting, saveRecognised, type WaitingFile } from "@/lib/store/waiting";

/** What is known of a file; `looking` while it is looked through. */
export type Looked = { readonly recognised: Recognised } | { readonly trouble: string } | "looking";

/** A page is not held up longer than this by a big file. */
const patienceMs = 2500;

// Next loads a page's and a route's modules apart from each other, so what runs hangs on globalThis.
const kept = globalThis as { canalAuditLooking?: Map<string, Promise<Looked>> };

/**
 * What is known of a file that waits, looking through it first where nobody has; a big file goes on being looked through behind the page.
 *
 * @param asked looks through it anew under what somebody settled by hand
 */
export async function lookThrough(
  reach: RecordsReach,
  file: WaitingFile,
  asked?: Partial<FileLayout>,
): Promise<Looked> {
  if (!asked && file.recognised) return { recognised: file.recognised as Recognised };
  if (!asked && file.trouble) return { trouble: file.trouble };
  kept.canalAuditLooking ??= new Map();
  const looking = kept.canalAuditLooking;
  const key = `${file.kept} ${JSON.stringify(asked ?? {})}`;
  let begun = looking.get(key);
  if (!begun) {
    begun = look(reach, file, asked).finally(() => looking.delete(key));
    looking.set(key, begun);
  }
  return asked ? begun : Promise.race([begun, later()]);
}

async function look(
  reach: RecordsReach,
  file: WaitingFile,
  asked: Partial<FileLayout> = {},
): Promise<Looked> {
  try {
    const recognised = await recognise(pathOfWaiting(file), file.name, asked);
    await saveRecognised(reach, file.id, { recognised });
    return { recognised };
  } catch (error) {
    const trouble = sentenceOf(error, file.name);
    // What somebody tried by hand and was wrong is forgotten; what was known before stays.
    if (Object.keys(asked).length === 0) await saveRecognised(reach, file.id, { trouble });
    return { trouble };
  }
}

function sentenceOf(error: unknown, name: string): string {
  if (error instanceof UnreadableFile) return error.message;
  if ((error as NodeJS.ErrnoException).code === "ENOENT")
    return `${name}: it is no longer there; bring it in again.`;
  throw error;
}

function later(): Promise<Looked> {
  return new Promise((resolve) => setTimeout(() => resolve("looking"), patienceMs).unref());
}
