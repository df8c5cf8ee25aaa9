import type { Value } from "@/lib/records/column";

const none = Buffer.alloc(0);

/** Rows in COPY's text format, in bytes. */
export class CopyText {
  lines = 0;
  #bytes = none;
  #length = 0;

  /** How many bytes it takes. */
  get size(): number {
    return this.#bytes.length;
  }

  /** Adds a row of cells that are written as COPY reads them. */
  add(cells: readonly string[]): void {
    const text = `${cells.join("\t")}\n`;
    // A unit of UTF-16 takes three bytes at most.
    if (this.#bytes.length - this.#length < 3 * text.length) this.#grow(3 * text.length);
    this.#length += this.#bytes.write(text, this.#length);
    this.lines += 1;
  }

  bytes(): Buffer {
    return this.#bytes.subarray(0, this.#length);
  }

  #grow(by: number): void {
    const bytes = Buffer.allocUnsafe(Math.max(2 * this.#bytes.length, 1 << 18) + by);
    this.#bytes.copy(bytes, 0, 0, this.#length);
    this.#bytes = bytes;
  }
}

/** A value in COPY's text format. */
export function cell(value: Value | undefined): string {
  if (value === undefined) return "\\N";
  if (typeof value !== "string") return String(value);
  return marks.test(value) ? value.replace(everyMark, (mark) => escapes[mark] ?? mark) : value;
}

export function json(value: unknown): string {
  // jsonb takes no NUL.
  return JSON.stringify(value).replaceAll("\\u0000", "\\ufffd");
}

const marks = /[\\\t\n\r]/;
const everyMark = /[\\\t\n\r]/g;
const escapes: Record<string, string> = { "\\": "\\\\", "\t": "\\t", "\n": "\\n", "\r": "\\r" };
