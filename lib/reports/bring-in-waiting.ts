import type { RecordsReach } from "@/lib/access/reach";
import { mappingSchema } from "@/lib/intake/mapping/mapping";
import { patientKey } from "@/lib/store/home/patient-key";
import { keepMapping } from "@/lib/store/mappings";
import { dropWaiting, pathOfWaiting, type WaitingFile, waitingFile } from "@/lib/store/waiting";
import type { Source } from "./import-records";
import { runInBackground } from "./run-in-background";

/**
 * Imports files that waited, each by its draft, which is kept as a mapping; they wait no longer when the import is done, and go on
 * waiting where it fails.
 *
 * @returns the import's id
 * @throws Error where a file has no whole draft, or none of the files waits any more
 */
export async function bringInWaiting(reach: RecordsReach, ids: readonly number[]): Promise<number> {
  const files: WaitingFile[] = [];
  for (const id of ids) {
    const file = await waitingFile(reach, id);
    if (file) files.push(file);
  }
  const [first] = files;
  if (!first) throw new Error("None of these files waits any more.");
  const sources: Source[] = [];
  for (const file of files) {
    const mapping = mappingSchema.parse(file.draft);
    const { version } = await keepMapping(reach, mapping.name, mapping);
    sources.push({
      path: pathOfWaiting(file),
      name: file.name,
      reading: { as: "mapped", by: { mapping, version } },
    });
  }
  const how = { zone: first.zone, key: await patientKey() };
  return runInBackground(reach, sources, how, async (done) => {
    if (done) for (const file of files) await letWaitingGo(reach, file.id);
  });
}

/** Forgets a file that waits, and deletes it. */
export async function letWaitingGo(reach: RecordsReach, id: number): Promise<void> {
  await dropWaiting(reach, id);
}
