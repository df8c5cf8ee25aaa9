/** Entries of POSIX.1-2017's ustar format (pax, "ustar Interchange Format"), as far as a backup needs it: regular files. */
export type TarEntry = { readonly name: string; readonly content: Buffer };

const BLOCK = 512;
/** No entry of a backup is larger: what is longer comes in parts, so that memory stays bounded. */
const LARGEST = 64 * 2 ** 20;

/** The archive is not whole, or is no archive. */
export class DamagedArchive extends Error {
  override readonly name = "DamagedArchive";
}

/** The bytes of one entry, its header before it and filled up to whole blocks. */
export function tarEntry({ name, content }: TarEntry, at: Date): Buffer[] {
  if (Buffer.byteLength(name) > 100) throw new Error(`the name ${name} is too long for an archive`);
  const header = Buffer.alloc(BLOCK);
  header.write(name, 0);
  header.write("0000600\0", 100);
  header.write("0000000\0", 108);
  header.write("0000000\0", 116);
  header.write(`${octal(content.length)}\0`, 124);
  header.write(`${octal(Math.floor(at.getTime() / 1000))}\0`, 136);
  header.write("        ", 148);
  header.write("0", 156);
  header.write("ustar\0", 257);
  header.write("00", 263);
  header.write(`${sumOf(header).toString(8).padStart(6, "0")}\0 `, 148);
  return [header, content, Buffer.alloc((BLOCK - (content.length % BLOCK)) % BLOCK)];
}

/** Two empty blocks end an archive. */
export const tarEnd = Buffer.alloc(2 * BLOCK);

/** The entries of an archive, one after the other. @throws DamagedArchive */
export async function* tarEntries(bytes: AsyncIterable<Buffer>): AsyncGenerator<TarEntry> {
  const take = taker(bytes);
  for (;;) {
    const header = await take(BLOCK);
    if (header.every((byte) => byte === 0)) return;
    const said = Number.parseInt(text(header, 148, 8), 8);
    header.fill(" ", 148, 156);
    const size = Number.parseInt(text(header, 124, 12), 8);
    if (said !== sumOf(header) || !(size >= 0 && size <= LARGEST))
      throw new DamagedArchive("it is no archive, or a part of it is damaged");
    const content = await take(size);
    await take((BLOCK - (size % BLOCK)) % BLOCK);
    yield { name: text(header, 0, 100), content };
  }
}

/** Hands out the next so many bytes of a stream. */
function taker(bytes: AsyncIterable<Buffer>): (count: number) => Promise<Buffer> {
  const stream = bytes[Symbol.asyncIterator]();
  let waiting: Buffer[] = [];
  let length = 0;
  return async (count) => {
    while (length < count) {
      const next = await stream.next();
      if (next.done) throw new DamagedArchive("it ends too early");
      waiting.push(next.value);
      length += next.value.length;
    }
    const all = Buffer.concat(waiting, length);
    waiting = [all.subarray(count)];
    length -= count;
    return Buffer.from(all.subarray(0, count));
  };
}

function octal(value: number): string {
  return value.toString(8).padStart(11, "0");
}

function text(header: Buffer, from: number, length: number): string {
  return header.toString("utf8", from, from + length).replace(/\0.*$/s, "");
}

function sumOf(header: Buffer): number {
  return header.reduce((sum, byte) => sum + byte, 0);
}
