import { holderReach, type RecordsReach } from "@/lib/access/reach";
import { forgetUpload } from "@/lib/store/import/uploads";
import { isLostConnection } from "@/lib/store/lost-connection";
import { type ImportHow, importRecords, type Source } from "./import-records";
import { keepFigures } from "./keep-figures";
import { noteWork } from "./log/work";

/**
 * Begins an import that goes on by itself; what goes wrong after its beginning stands on its page.
 *
 * @param ended called when it has ended, however it ended; `done` is false where nothing was brought in
 * @returns the import's id as soon as there is one
 */
export async function runInBackground(
  reach: RecordsReach,
  sources: readonly Source[],
  how: Omit<ImportHow, "onBegin" | "onProgress" | "heldListed">,
  ended: (done: boolean) => Promise<unknown>,
): Promise<number> {
  let tell: (importId: number) => void = () => undefined;
  const begun = new Promise<number>((resolve) => {
    tell = resolve;
  });
  let importId: number | undefined;
  const running = importRecords(reach, sources, {
    ...how,
    heldListed: 0,
    onBegin: (id) => {
      importId = id;
      tell(id);
    },
  }).then(
    () => true,
    (trouble: unknown) => {
      // Before it began there is no page to say it on.
      if (importId === undefined) throw trouble;
      return isLostConnection(trouble) ? null : false;
    },
  );
  const over = running.then(async (done) => {
    // The database was away: the files stay, and whoever finds them goes on.
    if (done === null) return;
    await ended(done);
    if (importId !== undefined && how.upload) await forgetUpload(reach, importId);
    if (importId !== undefined)
      await noteWork("import ended", reach.person, {
        ...{ import: importId, outcome: done ? "done" : "nothing brought in" },
      });
    // So that the first who looks does not wait for it.
    if (done) await keepFigures(holderReach().figures);
  });
  // Whatever happens after the beginning is nobody's to wait for.
  over.catch(() => undefined);
  return Promise.race([begun, over.then(() => begun)]);
}
