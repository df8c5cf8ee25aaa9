/** What a body of form data holds, in order: the head of a part, then its bytes. */
export type MultipartEvent =
  | { readonly part: { readonly name: string; readonly filename: string | undefined } }
  | { readonly bytes: Buffer };

/** The body is no form data; the sentence is for whoever sent it. */
export class NotFormData extends Error {
  override readonly name = "NotFormData";
}

/** A part's head may be this long, in bytes: room for a long file name. */
const longestHead = 16_384;

/**
 * Reads multipart/form-data (RFC 7578, RFC 2046 section 5.1) as it arrives, holding no more of it than one chunk and
 * the length of its boundary.
 *
 * @throws NotFormData where it has no boundary, a part without a name, or ends before its last boundary
 */
export async function* multipart(
  body: AsyncIterable<Uint8Array>,
  contentType: string,
): AsyncGenerator<MultipartEvent> {
  const boundary = /^multipart\/form-data;.*\bboundary=(?:"([^"]{1,70})"|([^\s;"]{1,70}))/i.exec(
    contentType,
  );
  if (!boundary) throw new NotFormData("What was sent is no form data.");
  const delimiter = Buffer.from(`\r\n--${boundary[1] ?? boundary[2]}`);
  // The first boundary has no line break before it.
  let held: Buffer = Buffer.from("\r\n");
  let within: "preamble" | "boundary" | "body" | "end" = "preamble";
  for await (const chunk of body) {
    held = Buffer.concat([held, chunk]);
    for (let going = true; going && within !== "end"; ) {
      if (within === "boundary") {
        const head = headOf(held);
        if (head === undefined) going = false;
        else if (head === "end") within = "end";
        else {
          held = held.subarray(head.length);
          within = "body";
          yield { part: head.part };
        }
        continue;
      }
      const at = held.indexOf(delimiter);
      const ready = at < 0 ? Math.max(0, held.length - delimiter.length + 1) : at;
      if (within === "body" && ready > 0) yield { bytes: held.subarray(0, ready) };
      held = held.subarray(at < 0 ? ready : at + delimiter.length);
      if (at < 0) going = false;
      else within = "boundary";
    }
  }
  if (within !== "end") throw new NotFormData("What was sent broke off before its end.");
}

type Head = {
  readonly part: { name: string; filename: string | undefined };
  readonly length: number;
};

/** The head after a boundary; undefined while it is not whole. */
function headOf(held: Buffer): Head | "end" | undefined {
  if (held.length < 2) return undefined;
  if (held.toString("latin1", 0, 2) === "--") return "end";
  const end = held.indexOf("\r\n\r\n");
  if (end < 0) {
    if (held.length > longestHead)
      throw new NotFormData("A part of the form has no end to its head.");
    return undefined;
  }
  const disposition =
    /^content-disposition:\s*form-data;(.*)$/im.exec(held.toString("utf8", 0, end))?.[1] ?? "";
  const name = parameter(disposition, "name");
  if (name === undefined) throw new NotFormData("A part of the form has no name.");
  return { part: { name, filename: parameter(disposition, "filename") }, length: end + 4 };
}

/** Browsers write quotes and line breaks in names as %22, %0D and %0A (HTML, multipart form data). */
function parameter(text: string, name: string): string | undefined {
  const found = new RegExp(`(?:^|;)\\s*${name}="((?:[^"\\\\]|\\\\.)*)"`, "i").exec(text)?.[1];
  return found
    ?.replaceAll(/%(22|0D|0A)/gi, (code) => decodeURIComponent(code))
    .replaceAll(/\\(["\\])/g, "$1");
}
