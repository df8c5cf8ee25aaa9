import { mkdir, open, rm } from "node:fs/promises";
import { basename, extname, join } from "node:path";
import type { Source } from "./import-records";
import { keepUpload } from "./kept-upload";
import { multipart, NotFormData } from "./multipart";
import { recordFileEndings } from "./record-files";
import { newUploadFolder, removeLeftovers } from "./upload-folders";

/** What was sent cannot be taken; the sentence is for whoever sent it. */
export class UploadRefused extends Error {
  override readonly name = "UploadRefused";
}

export type Upload = {
  readonly sources: readonly Source[];
  readonly fields: Readonly<Record<string, string>>;
  /** Name of its folder among the home's uploads. */
  readonly folder: string;
  /** Deletes the files; may be called twice. */
  remove(): Promise<void>;
};

/** No more files than this at once, and no longer text in a field than so many bytes. */
const mostFiles = 1000;
const longestField = 1000;

/**
 * Writes the files of a form to a private folder of the home as they arrive, with a list of their names. No more bytes than
 * CANAL_AUDIT_UPLOAD_MB (2048 where it is not set).
 *
 * @param kept folders of uploads that an import still needs though the process that took them is gone
 * @param person whose upload it is, for whoever goes on with it
 * @throws UploadRefused; nothing is left on the disk then
 */
export async function receiveUpload(
  body: AsyncIterable<Uint8Array>,
  contentType: string,
  kept: readonly string[] = [],
  person?: string,
): Promise<Upload> {
  await removeLeftovers(kept);
  const folder = newUploadFolder();
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const remove = () => rm(folder, { recursive: true, force: true });
  try {
    const upload = await write(bounded(body), contentType, folder);
    const { sources, fields } = upload;
    const names = sources.map(({ path, name }) => ({ file: basename(path), name }));
    await keepUpload(folder, { names, zone: fields.zone ?? "", person });
    return { ...upload, folder: basename(folder), remove };
  } catch (error) {
    await remove();
    throw error instanceof NotFormData ? new UploadRefused(error.message) : error;
  }
}

async function write(body: AsyncIterable<Uint8Array>, contentType: string, folder: string) {
  const sources: Source[] = [];
  const fields: Record<string, string> = {};
  let file: Awaited<ReturnType<typeof open>> | undefined;
  let field = "";
  try {
    for await (const event of multipart(body, contentType)) {
      if ("part" in event) {
        await file?.close();
        file = undefined;
        field = "";
        const { name, filename } = event.part;
        if (filename === undefined) {
          field = name;
          fields[name] = "";
        } else if (filename !== "") {
          const source = sourceIn(folder, sources.length, filename);
          sources.push(source);
          file = await open(source.path, "wx", 0o600);
        }
      } else if (file) await file.appendFile(event.bytes);
      else if (field) {
        fields[field] += event.bytes.toString("utf8");
        if ((fields[field] ?? "").length > longestField)
          throw new UploadRefused(`The field ${field.slice(0, 40)} is too long.`);
      }
    }
  } finally {
    await file?.close();
  }
  return { sources, fields };
}

/** The file keeps its ending, by which it is read, and nothing else of its name on the disk. */
function sourceIn(folder: string, place: number, filename: string): Source {
  if (place >= mostFiles)
    throw new UploadRefused(`More than ${mostFiles} files at once; bring them in by parts.`);
  const ending = extname(filename).toLowerCase();
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out.
  const name = filename.replaceAll(/[\u0000-\u001f\u007f]/g, " ").slice(-200);
  if (!recordFileEndings.includes(ending)) {
    throw new UploadRefused(
      `${name} is no record file; those end in ${recordFileEndings.join(", ")}. Nothing was brought in.`,
    );
  }
  return { path: join(folder, `${place}${ending}`), name };
}

async function* bounded(body: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  const most = Number(process.env.CANAL_AUDIT_UPLOAD_MB) || 2048;
  let read = 0;
  for await (const chunk of body) {
    read += chunk.length;
    if (read > most * 1024 * 1024) {
      throw new UploadRefused(
        `The files are larger than ${most} MB together. Bring them in by parts, or by the command, which has no limit.`,
      );
    }
    yield chunk;
  }
}
