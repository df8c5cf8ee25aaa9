import type { RecordsReach } from "@/lib/access/reach";
import { patientKey } from "@/lib/store/home/patient-key";
import { importRecords } from "./import-records";
import { receiveUpload, UploadRefused } from "./receive-upload";
import { isTimeZone } from "./time-zone";

/**
 * Takes the files of a form and begins their import, which goes on by itself; its page tells how it goes. The
 * files are deleted when it has ended, however it ends. The field `zone` is the time zone of practices not yet known.
 *
 * @returns the import's id as soon as there is one
 * @throws UploadRefused where nothing was begun
 */
export async function startImport(
  reach: RecordsReach,
  body: AsyncIterable<Uint8Array>,
  contentType: string,
): Promise<number> {
  const upload = await receiveUpload(body, contentType);
  try {
    if (upload.sources.length === 0) throw new UploadRefused("Choose at least one file.");
    const zone = upload.fields.zone || "UTC";
    if (!isTimeZone(zone))
      throw new UploadRefused(
        `"${zone.slice(0, 60)}" is no time zone; choose one as Europe/London.`,
      );
    const key = await patientKey();
    const { promise, resolve, reject } = begun();
    // What goes wrong after the beginning stands on the import's page.
    importRecords(reach, upload.sources, { zone, key, onBegin: resolve, heldListed: 0 })
      .catch(reject)
      .finally(upload.remove);
    return await promise;
  } catch (error) {
    await upload.remove();
    throw error;
  }
}

function begun() {
  let resolve: (importId: number) => void = () => undefined;
  let reject: (error: unknown) => void = () => undefined;
  const promise = new Promise<number>((yes, no) => {
    resolve = yes;
    reject = no;
  });
  return { promise, resolve, reject };
}
