import { readFile, rename, rm } from "node:fs/promises";
import { basename, join } from "node:path";
import { z } from "zod";
import type { RecordsReach } from "@/lib/access/reach";
import { patientKey } from "@/lib/store/home/patient-key";
import { claimBrokenOff, wentOnAs } from "@/lib/store/import/uploads";
import { namesFile, newUploadFolder, uploadsFolder } from "./receive-upload";
import { runInBackground } from "./run-in-background";

const kept = z.object({
  names: z.array(z.object({ file: z.string().regex(/^\d+\.\w+$/), name: z.string() })),
  zone: z.string(),
});

/**
 * Begins an import anew that was broken off, as when the tool was stopped: its files are still there.
 *
 * @returns the new import's id, or null where there is nothing to go on with
 */
export async function resumeImport(reach: RecordsReach, importId: number): Promise<number | null> {
  const before = await claimBrokenOff(reach, importId);
  if (before === null) return null;
  const folder = newUploadFolder();
  // A name is all that is taken from the database.
  const found = await rename(join(uploadsFolder(), basename(before)), folder).catch(missing);
  if (found === "missing") return null;
  const { names, zone } = kept.parse(JSON.parse(await readFile(join(folder, namesFile), "utf8")));
  const sources = names.map(({ file, name }) => ({ path: join(folder, file), name }));
  const how = { zone: zone || "UTC", key: await patientKey(), upload: basename(folder) };
  const next = await runInBackground(reach, sources, how, () =>
    rm(folder, { recursive: true, force: true }),
  );
  await wentOnAs(reach, importId, next);
  return next;
}

function missing(trouble: NodeJS.ErrnoException): "missing" {
  if (trouble.code === "ENOENT") return "missing";
  throw trouble;
}

/** Deletes the files of an import that was broken off. */
export async function letUploadGo(reach: RecordsReach, importId: number): Promise<void> {
  const before = await claimBrokenOff(reach, importId);
  if (before !== null)
    await rm(join(uploadsFolder(), basename(before)), { recursive: true, force: true });
}
