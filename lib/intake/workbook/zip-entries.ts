import { stat } from "node:fs/promises";
import type { Readable } from "node:stream";
import yauzl from "yauzl";

/** A workbook's parts, to be read as streams. */
export type Parts = { names: string[]; open(name: string): Promise<Readable>; close(): void };

/** No honest workbook unpacks to more than this, in a part or in all that is read, or to so many times its own size. */
const largestPart = 2 * 1024 ** 3;
const largestOfAll = 8 * 1024 ** 3;
const largestRatio = 200;
const mostParts = 20_000;
/** So much may be packed as tightly as it will. */
const anyRatio = 1e8;

/** Opens a ZIP file; throws in plain words where it is none, or where one of its parts unpacks to far more than a workbook holds. */
export async function zipEntries(path: string): Promise<Parts> {
  const zip = await yauzl.openPromise(path, { autoClose: false }).catch(() => {
    throw new Error("it is none, or is cut off");
  });
  const size = (await stat(path)).size;
  const entries = new Map<string, yauzl.Entry>();
  let unpacked = 0;
  try {
    if (zip.entryCount > mostParts) throw new Error("it has more parts than a workbook has");
    for await (const entry of zip.eachEntry()) entries.set(entry.fileName, entry);
  } catch (trouble) {
    zip.close();
    throw trouble;
  }
  return {
    names: [...entries.keys()],
    close: () => zip.close(),
    open: async (name) => {
      const entry = entries.get(name);
      if (!entry) throw new Error(`the workbook has no part ${name}`);
      // That a part is as long as it says is looked after while it is unpacked.
      const { uncompressedSize: part, compressedSize: packed } = entry;
      unpacked += part;
      if (
        part > largestPart ||
        unpacked > largestOfAll ||
        (part > anyRatio && part > largestRatio * packed) ||
        (unpacked > 4 * anyRatio && unpacked > largestRatio * size)
      )
        throw new Error("it unpacks to far more than a workbook holds");
      return zip.openReadStreamPromise(entry);
    },
  };
}
