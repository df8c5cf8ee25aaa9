import type { Readable } from "node:stream";
import { SaxesParser } from "saxes";

export type Handlers = {
  open?(name: string, attributes: Readonly<Record<string, string>>): void;
  close?(name: string): void;
  text?(text: string): void;
};

/** No part of a workbook is nested deeper, nor has a tag or text longer than this, in characters; both would fill the memory. */
const deepest = 200;
const longestPiece = 4_000_000;

/** Reads XML as a stream, calling the handlers; yields after every piece, so that what was gathered can be passed on. Names come without prefix. */
export async function* parseXml(source: Readable, handlers: Handlers): AsyncGenerator<void> {
  const parser = new SaxesParser();
  const local = (name: string) => name.slice(name.indexOf(":") + 1);
  const damaged = () => new Error("a part of it is damaged or cut off");
  let depth = 0;
  let sinceLast = 0;
  parser.on("opentag", (tag) => {
    depth += 1;
    sinceLast = 0;
    if (depth > deepest) throw damaged();
    handlers.open?.(local(tag.name), tag.attributes as Record<string, string>);
  });
  parser.on("closetag", (tag) => {
    depth -= 1;
    sinceLast = 0;
    handlers.close?.(local(tag.name));
  });
  parser.on("text", (text) => handlers.text?.(text));
  parser.on("error", () => {
    throw damaged();
  });
  source.setEncoding("utf8");
  for await (const piece of source) {
    sinceLast += (piece as string).length;
    if (sinceLast > longestPiece) throw damaged();
    parser.write(piece as string);
    yield;
  }
  parser.close();
  yield;
}

/** Reads a whole small part. */
export async function readXml(source: Readable, handlers: Handlers): Promise<void> {
  for await (const _ of parseXml(source, handlers));
}
