import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import type { Viewer } from "@/lib/access/viewer";
import { commandLine } from "@/lib/records/log-line";
import { brokenOffUploads } from "@/lib/store/import/broken-off";
import { viewerNumbered } from "@/lib/store/people/viewer-of";
import { asViewer, asHolder as pastTheWall } from "@/lib/store/wall/as-whom";
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
  return pastTheWall(async () => {
    const taken: number[] = [];
    for (const { id, upload } of await brokenOffUploads(asHolder().records)) {
      const found = await keptUpload(upload);
      if (!found || !(await goneOnWith(id, found.kept.person))) continue;
      taken.push(id);
    }
    return taken;
  });
}

/** Begins it as whoever brought it in. False where they may no longer, or another process does. */
async function goneOnWith(id: number, person: string | undefined): Promise<boolean> {
  if (person === undefined) return false;
  const viewer = person === commandLine ? null : await viewerNumbered(person);
  const reach = person === commandLine ? asHolder().records : viewer && reachOf(viewer);
  if (!reach) return false;
  const resumed = () => resumeImport(reach, id, false);
  if (!(await (viewer ? asViewer(viewer, resumed) : resumed()))) return false;
  await noteWork("import taken up", reach.person, { import: id });
  return true;
}

function reachOf(viewer: Viewer): RecordsReach | null {
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
