import { unbroken } from "@/lib/views/unbroken";
import { draws } from "./font";

/** Signs that the font lacks, and what stands for them. */
const instead: Record<string, string> = {
  // The narrow space that keeps words together.
  "\u202f": "\u00a0",
  "\u2011": "-",
  "\u25d0": "\u25cf",
  "\t": " ",
};

const missing = "\u25a1";

/** Words as the font can draw them; a sign that it cannot draw is an empty square. */
export function printable(words: string): string {
  let written = "";
  for (const sign of unbroken(words.normalize("NFC")).replace(/\r\n?/g, "\n")) {
    written += sign === "\n" || draws(sign) ? (instead[sign] ?? sign) : (instead[sign] ?? missing);
  }
  return written;
}
