import type { Readable } from "node:stream";
import { SaxesParser } from "saxes";

export type Handlers = {
  open?(name: string, attributes: Readonly<Record<string, string>>): void;
  close?(name: string): void;
  text?(text: string): void;
};

/** Reads XML as a stream, calling the handlers; yields after every piece, so that what was gathered can be passed on. Names come without prefix. */
export async function* parseXml(source: Readable, handlers: Handlers): AsyncGenerator<void> {
  const parser = new SaxesParser();
  const local = (name: string) => name.slice(name.indexOf(":") + 1);
  parser.on("opentag", (tag) =>
    handlers.open?.(local(tag.name), tag.attributes as Record<string, string>),
  );
  parser.on("closetag", (tag) => handlers.close?.(local(tag.name)));
  parser.on("text", (text) => handlers.text?.(text));
  parser.on("error", () => {
    throw new Error("a part of it is damaged or cut off");
  });
  source.setEncoding("utf8");
  for await (const piece of source) {
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
