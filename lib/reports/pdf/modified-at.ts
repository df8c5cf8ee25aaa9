/**
 * The renderer writes the date of modification under a name that no reader of PDF looks for. The name of the format
 * is put in its place, with spaces after it, so that every other byte stays where the file's table says it is.
 */
export function modifiedAt(bytes: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> {
  const place = Buffer.from(bytes.buffer).lastIndexOf(written);
  if (place >= 0) bytes.set(Buffer.from(meant.padEnd(written.length)), place);
  return bytes;
}

const written = "/ModificationDate ";
const meant = "/ModDate ";
