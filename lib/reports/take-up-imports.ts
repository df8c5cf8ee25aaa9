import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { commandLine } from "@/lib/records/log-line";
import { brokenOffUploads } from "@/lib/store/import/broken-off";
import { viewerNumbered } from "@/lib/store/people/viewer-of";
import { asHolder } from "./as-holder";
import { keptUpload } from "./kept-upload";
import { noteWork } from "./log/work";
import { resumeImport } from "./resume-import";

/**
 * Goes on with imports whose process is gone, where their files are here: in the name and within the reach of whoever brought them in.
 * Asked by any process while it answers; the database says who does it.
 *
 * @returns the imports that go on here
 */
export async function takeUpImports(): Promise<number[]> {
  const taken: number[] = [];
  for (const { id, upload } of await brokenOffUploads(asHolder().records)) {
    const found = await keptUpload(upload);
    if (!found) continue;
    const reach = await reachOf(found.kept.person);
    if (!reach) continue;
    if (!(await resumeImport(reach, id, false))) continue;
    await noteWork("import taken up", reach.person, { import: id });
    taken.push(id);
  }
  return taken;
}

/** Null where whoever brought it in may no longer. */
async function reachOf(person: string | undefined): Promise<RecordsReach | null> {
  if (person === undefined) return null;
  if (person === commandLine) return asHolder().records;
  const viewer = await viewerNumbered(person);
  if (!viewer) return null;
  try {
    return recordsReach(viewer);
  } catch (error) {
    if (error instanceof Refused) return null;
    throw error;
  }
}

const every = 5_000;
let last = 0;

/** The same, not more often than every few seconds a process, and to nobody's trouble: for whoever answers a page. */
export async function takeUpNowAndThen(): Promise<void> {
  if (Date.now() - last < every) return;
  last = Date.now();
  await takeUpImports().catch((error: unknown) => console.error(error));
}
