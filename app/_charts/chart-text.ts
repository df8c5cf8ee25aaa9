import type { ChartAxis, ChartReference } from "@/lib/views/chart-rows";

/** Room for the longest of some texts at 14 px, in pixels; digits and letters of the font are 7.5 px or less. */
export function textWidth(texts: readonly string[]): number {
  return Math.max(0, ...texts.map((text) => text.length)) * 7.3 + 14;
}

/** Where the words over an upright line stand: to the side that has room, one line higher for each further one. */
export function referenceLabel(reference: ChartReference, axis: ChartAxis, place: number) {
  const right = reference.value - axis.min > (axis.max - axis.min) / 2;
  return { anchor: right ? ("end" as const) : ("start" as const), up: 7 + place * 17 };
}

/** Words in lines of at most so many letters; a longer word has a line of its own. */
export function linesOf(words: string, letters: number): string[] {
  const lines: string[] = [];
  for (const word of words.split(" ")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= letters) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else {
      lines.push(word);
    }
  }
  return lines;
}
