import type { Readable } from "node:stream";
import { longestLine } from "./lines-of";

/** What is not an array at all, or stands after one or is missing at its end. */
export type JsonTrouble = "no array" | "text after the array" | "not closed";
/** An item of an array as text; one longer than a row can be is cut off. */
export type JsonItem = { readonly text: string; readonly tooLong: boolean };

/** What matters within quotes; all else there is passed over at once. */
const endsOrEscapes = /["\\\n]/g;

/**
 * Cuts the text of a JSON array (RFC 8259) into its items, so that one item at a time is in memory. An item with a mistake
 * in it costs no other item as long as its braces pair up; a quote is never open beyond the end of its line, as
 * JSON has no line breaks in texts.
 */
export async function* jsonItems(source: Readable): AsyncGenerator<JsonItem | JsonTrouble> {
  let state = "before" as "before" | "between" | "within" | "after";
  let depth = 0;
  let quoted = false;
  let escaped = false;
  let text = "";
  const made = (): JsonItem => {
    const item = { text: text.trim(), tooLong: text.length > longestLine };
    text = "";
    state = "between";
    return item;
  };
  source.setEncoding("utf8");
  for await (const piece of source) {
    const chunk = piece as string;
    let from = 0;
    for (let at = 0; at < chunk.length; at += 1) {
      if (quoted && !escaped) {
        endsOrEscapes.lastIndex = at;
        at = endsOrEscapes.exec(chunk)?.index ?? chunk.length;
        if (at === chunk.length) break;
      }
      const mark = chunk[at] as string;
      if (state === "within") {
        if (quoted) {
          if (escaped) escaped = false;
          else if (mark === "\\") escaped = true;
          else if (mark === '"') quoted = false;
          else if (mark === "\n") {
            quoted = false;
            const whole = joined(text, chunk.slice(from, at));
            // The quote has swallowed the braces of an item written in one line.
            if (!whole.includes("\n")) {
              text = whole;
              yield made();
            }
          }
          continue;
        }
        if (mark === '"') quoted = true;
        else if (mark === "{" || mark === "[") depth += 1;
        else if (mark === "}" || mark === "]") depth -= 1;
        const ended = mark === "}" || mark === "]" || mark === ",";
        if (!ended || depth > 0) continue;
        // An item without braces ends with the comma or bracket after it, which is not part of it.
        const closesArray = mark === "]" && depth < 0;
        const own = depth === 0 && mark !== ",";
        text = joined(text, chunk.slice(from, own ? at + 1 : at));
        depth = 0;
        yield made();
        if (closesArray) state = "after";
      } else if (!isSpace(mark)) {
        if (state === "before") {
          if (mark !== "[") return yield "no array";
          state = "between";
        } else if (state === "after") return yield "text after the array";
        else if (mark === "]") state = "after";
        else if (mark !== ",") {
          state = "within";
          quoted = mark === '"';
          depth = mark === "{" || mark === "[" ? 1 : 0;
          from = at;
        }
      }
    }
    if (state === "within") text = joined(text, chunk.slice(from));
  }
  if (state === "after") return;
  if (state === "before") return yield "no array";
  if (state === "within") yield made();
  yield "not closed";
}

function joined(text: string, more: string): string {
  return text.length > longestLine ? text : text + more;
}

function isSpace(mark: string): boolean {
  return mark === " " || mark === "\n" || mark === "\r" || mark === "\t" || mark === "\ufeff";
}
