import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { mappingSchema } from "@/lib/intake/mapping/mapping";
import { missingFields } from "@/lib/intake/propose/propose";
import { practicesWithin } from "@/lib/store/records/practices";
import { type WaitingFile, waitingFiles } from "@/lib/store/waiting";
import { moment } from "@/lib/views/day";
import { bringInWaiting, letWaitingGo } from "./bring-in-waiting";

/** A file that waits for a mapping, as the list shows it. */
export type WaitingLine = {
  readonly id: number;
  readonly name: string;
  readonly at: string;
  readonly by: string;
  /** What is to be done, in one sentence. */
  readonly says: string;
  /** A mapping is there that feeds every required field. */
  readonly ready: boolean;
};

/** The files that wait. @throws Refused */
export async function waitingList(viewer: Viewer): Promise<WaitingLine[]> {
  const reach = recordsReach(viewer);
  const [files, practices] = await Promise.all([waitingFiles(reach), practicesWithin(reach)]);
  const zone = practices[0]?.zone ?? "UTC";
  return files.map((file) => {
    const ready = isReady(file);
    return {
      ...{ id: file.id, name: file.name, by: file.by, at: moment(file.at, zone), ready },
      says:
        file.trouble ??
        (ready
          ? "Its mapping feeds every field that is required."
          : "No mapping knows it yet; open it to make one."),
    };
  });
}

function isReady({ draft }: WaitingFile): boolean {
  const read = mappingSchema.safeParse(draft);
  return read.success && missingFields(read.data).length === 0;
}

/** Brings files in by their mappings, all in one import. @throws Refused */
export async function bringWaitingIn(
  reach: RecordsReach,
  ids: readonly number[],
): Promise<{ importId: number } | { wrong: { form: string } }> {
  const files = (await waitingFiles(reach)).filter(({ id }) => ids.includes(id));
  if (files.length === 0) return { wrong: { form: "Choose a file that still waits." } };
  const unready = files.find((file) => !isReady(file));
  if (unready)
    return { wrong: { form: `${unready.name} has no whole mapping yet; open it to make one.` } };
  return { importId: await bringInWaiting(reach, ids) };
}

/** Deletes a file that waits. @throws Refused */
export async function dropWaitingFile(reach: RecordsReach, id: number): Promise<{ done: string }> {
  await letWaitingGo(reach, id);
  return { done: "The file is deleted; nothing of it was brought in." };
}
