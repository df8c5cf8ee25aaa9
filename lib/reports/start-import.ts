import { randomBytes } from "node:crypto";
import { mkdir, rename, stat } from "node:fs/promises";
import { extname, join } from "node:path";
import type { RecordsReach } from "@/lib/access/reach";
import { homeFolder } from "@/lib/store/home/home-folder";
import { patientKey } from "@/lib/store/home/patient-key";
import { uploadsNeeded } from "@/lib/store/import/uploads";
import { addWaiting } from "@/lib/store/waiting";
import { howToRead, knownMappings } from "./how-to-read";
import { intakeContext, type Source } from "./import-records";
import { receiveUpload, type Upload, UploadRefused } from "./receive-upload";
import { runInBackground } from "./run-in-background";
import { isTimeZone } from "./time-zone";

/** What became of the files of a form. */
export type Begun = {
  /** The import of those that could be read; undefined where there was none. */
  readonly importId?: number;
  /** Files that wait for a mapping, by their ids. */
  readonly waiting: readonly number[];
};

/**
 * Takes the files of a form. Those of the record format, and those that a kept mapping fits, are imported, which goes on by itself
 * and its page tells how it goes; they are deleted when it has ended. The others wait for a mapping. The field
 * `zone` is the time zone of practices not yet known.
 *
 * @throws UploadRefused where nothing was begun and nothing waits
 */
export async function startImport(
  reach: RecordsReach,
  body: AsyncIterable<Uint8Array>,
  contentType: string,
): Promise<Begun> {
  const upload = await receiveUpload(body, contentType, await uploadsNeeded(reach), reach.person);
  try {
    if (upload.sources.length === 0) throw new UploadRefused("Choose at least one file.");
    const zone = upload.fields.zone || "UTC";
    if (!isTimeZone(zone))
      throw new UploadRefused(
        `"${zone.slice(0, 60)}" is no time zone; choose one as Europe/London.`,
      );
    return await begin(reach, upload, zone);
  } catch (error) {
    await upload.remove();
    throw error;
  }
}

async function begin(reach: RecordsReach, upload: Upload, zone: string): Promise<Begun> {
  await refuseEmpty(upload.sources);
  const key = await patientKey();
  const context = await intakeContext(reach, { zone, key });
  const mappings = await knownMappings(reach);
  const known: Source[] = [];
  const others: Source[] = [];
  for (const source of upload.sources) {
    const reading = await howToRead(source, mappings, context);
    if (reading.as === "unknown") others.push(source);
    else known.push({ ...source, reading });
  }
  const waiting: number[] = [];
  for (const source of others) waiting.push(await keptWaiting(reach, source, zone));
  if (known.length === 0) {
    await upload.remove();
    return { waiting };
  }
  const how = { zone, key, upload: upload.folder };
  return { waiting, importId: await runInBackground(reach, known, how, upload.remove) };
}

async function refuseEmpty(sources: readonly Source[]): Promise<void> {
  for (const { path, name } of sources)
    if ((await stat(path)).size === 0)
      throw new UploadRefused(
        `${name}: it is empty; export it again, or leave it out. Nothing was brought in.`,
      );
}

async function keptWaiting(
  reach: RecordsReach,
  { path, name }: Source,
  zone: string,
): Promise<number> {
  const folder = "waiting";
  await mkdir(join(homeFolder(), folder), { recursive: true, mode: 0o700 });
  const kept = join(folder, `${randomBytes(8).toString("hex")}${extname(path)}`);
  await rename(path, join(homeFolder(), kept));
  const { size } = await stat(join(homeFolder(), kept));
  return addWaiting(reach, { name, kept, bytes: size, zone });
}
