import { randomUUID } from "node:crypto";
import { type FileHandle, open, unlink } from "node:fs/promises";
import { join } from "node:path";

/** Where bytes lie in the file. */
export type Spooled = { readonly at: number; readonly length: number };

/**
 * Bytes that wait on the disk instead of in memory. Their file has no name from the moment it is there: whatever becomes of the process,
 * nothing is left of it.
 */
export class Spool {
  #file: Promise<FileHandle | null> | undefined;
  #end = 0;
  #waiting = 0;

  /** @param most bytes of the file */
  constructor(
    readonly folder: string,
    readonly most = 2 ** 30,
  ) {}

  /** Null where there is no room for them, or no file can be made. */
  async put(bytes: Buffer): Promise<Spooled | null> {
    if (this.#end + bytes.length > this.most) return null;
    this.#file ??= nameless(this.folder);
    const file = await this.#file;
    if (!file) return null;
    const spooled = { at: this.#end, length: bytes.length };
    this.#end += bytes.length;
    this.#waiting += 1;
    try {
      await writeAll(file, bytes, spooled.at);
      return spooled;
    } catch (trouble) {
      this.#done();
      if (isFull(trouble)) return null;
      throw trouble;
    }
  }

  /** Once of each; when nothing waits any more the file is written from its beginning again. */
  async take({ at, length }: Spooled): Promise<Buffer> {
    const file = await this.#file;
    const bytes = Buffer.allocUnsafe(length);
    for (let read = 0; read < length; ) {
      const { bytesRead } = (await file?.read(bytes, read, length - read, at + read)) ?? {};
      if (!bytesRead) throw new Error("What waited on the disk to be stored is gone.");
      read += bytesRead;
    }
    this.#done();
    return bytes;
  }

  async close(): Promise<void> {
    await (await this.#file)?.close();
  }

  #done(): void {
    this.#waiting -= 1;
    if (this.#waiting === 0) this.#end = 0;
  }
}

async function nameless(folder: string): Promise<FileHandle | null> {
  const path = join(folder, `waiting-${randomUUID()}`);
  const file = await open(path, "wx+", 0o600).catch(() => null);
  if (!file) return null;
  try {
    await unlink(path);
    return file;
  } catch {
    await file.close();
    return null;
  }
}

async function writeAll(file: FileHandle, bytes: Buffer, at: number): Promise<void> {
  for (let written = 0; written < bytes.length; ) {
    const { bytesWritten } = await file.write(bytes, written, bytes.length - written, at + written);
    written += bytesWritten;
  }
}

function isFull(trouble: unknown): boolean {
  const code = trouble instanceof Error && "code" in trouble ? trouble.code : "";
  return ["ENOSPC", "EDQUOT", "EFBIG"].includes(String(code));
}
