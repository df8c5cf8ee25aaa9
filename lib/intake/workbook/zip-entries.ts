import type { Readable } from "node:stream";
import yauzl from "yauzl";

/** A workbook's parts, to be read as streams. */
export type Parts = { names: string[]; open(name: string): Promise<Readable>; close(): void };

/** No honest workbook unpacks to more than this, or to so many times its own size. */
const largestPart = 2 * 1024 ** 3;
const largestRatio = 200;

/** Opens a ZIP file; throws in plain words where it is none. */
export async function zipEntries(path: string): Promise<Parts> {
  const zip = await yauzl.openPromise(path, { autoClose: false }).catch(() => {
    throw new Error("it is none, or is cut off");
  });
  const entries = new Map<string, yauzl.Entry>();
  for await (const entry of zip.eachEntry()) entries.set(entry.fileName, entry);
  return {
    names: [...entries.keys()],
    close: () => zip.close(),
    open: async (name) => {
      const entry = entries.get(name);
      if (!entry) throw new Error(`the workbook has no part ${name}`);
      const { uncompressedSize: size, compressedSize: packed } = entry;
      if (size > largestPart || (size > 1e8 && size > largestRatio * packed))
        throw new Error("it unpacks to far more than a workbook holds");
      return zip.openReadStreamPromise(entry);
    },
  };
}
