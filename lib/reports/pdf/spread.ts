import type { FontFace } from "./font";
import { linesWithin } from "./lines-within";

/** Words with their ends of lines set, where the renderer would let a long word stand out. */
export function spread(
  words: string,
  setting: { width: number; size: number; face?: FontFace },
): string {
  // A hair less, so that the renderer, which adds up widths in another order, ends no line once more.
  return linesWithin(words, { ...setting, width: setting.width - 0.5 }).join("\n");
}
