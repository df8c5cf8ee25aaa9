import { rm } from "node:fs/promises";
import { basename, join } from "node:path";
import type { RecordsReach } from "@/lib/access/reach";
import { patientKey } from "@/lib/store/home/patient-key";
import { closeBrokenOff, TakenUp } from "@/lib/store/import/broken-off";
import { importOf } from "@/lib/store/import/imports";
import { claimBrokenOff } from "@/lib/store/import/uploads";
import { keptUpload } from "./kept-upload";
import { runInBackground } from "./run-in-background";
import { uploadsFolder } from "./upload-folders";

/**
 * Goes on with an import that was broken off, as when the tool was stopped: its files are still there. It keeps its number; of several
 * who ask, one goes on.
 *
 * @param asked false where a process does it by itself
 * @returns false where there is nothing to go on with
 */
export async function resumeImport(
  reach: RecordsReach,
  importId: number,
  asked = true,
): Promise<boolean> {
  await closeBrokenOff();
  const found = await importOf(reach, importId);
  if (found?.state !== "failed" || !found.upload) return false;
  const upload = await keptUpload(found.upload);
  if (!upload) return false;
  const { folder, kept, sources } = upload;
  const how = {
    ...{ zone: kept.zone || "UTC", key: await patientKey() },
    ...{ upload: found.upload, again: { importId, asked } },
  };
  try {
    await runInBackground(reach, sources, how, () => rm(folder, { recursive: true, force: true }));
    return true;
  } catch (trouble) {
    if (trouble instanceof TakenUp) return false;
    throw trouble;
  }
}

/** Deletes the files of an import that was broken off. */
export async function letUploadGo(reach: RecordsReach, importId: number): Promise<void> {
  const before = await claimBrokenOff(reach, importId);
  if (before !== null)
    await rm(join(uploadsFolder(), basename(before)), { recursive: true, force: true });
}
