export const toothNotations = ["fdi", "universal", "palmer"] as const;
export type ToothNotation = (typeof toothNotations)[number];

/**
 * A tooth as its two digits by ISO 3950, or undefined where the notation has no such tooth.
 *
 * - `fdi`: 11–18, 21–28, 31–38, 41–48; primary teeth 51–55, 61–65, 71–75, 81–85 (ISO 3950).
 * - `universal`: 1–32 from the upper right round to the lower right; primary teeth A–T.
 * - `palmer`: the text form, quadrant and position: UR6 is 16; primary teeth by letter, URA is 51.
 */
export function toothByIso3950(text: string, notation: ToothNotation): string | undefined {
  if (notation === "fdi") return /^([1-4][1-8]|[5-8][1-5])$/.test(text) ? text : undefined;
  if (notation === "universal") return fromUniversal(text.toUpperCase());
  return fromPalmer(text.toUpperCase());
}

function fromUniversal(text: string): string | undefined {
  if (/^[A-T]$/.test(text)) {
    const place = text.charCodeAt(0) - 65;
    return alongArch(place, 5, 5);
  }
  if (!/^([1-9]|[12]\d|3[0-2])$/.test(text)) return undefined;
  return alongArch(Number(text) - 1, 8, 1);
}

/** `place` counts from the upper right back tooth round to the lower right one. */
function alongArch(place: number, teeth: number, firstQuadrant: number): string {
  const quadrant = Math.floor(place / teeth);
  const within = place % teeth;
  const fromMidline = quadrant % 2 === 0 ? teeth - within : within + 1;
  return `${firstQuadrant + quadrant}${fromMidline}`;
}

function fromPalmer(text: string): string | undefined {
  const parts = /^(UR|UL|LL|LR)([1-8]|[A-E])$/.exec(text);
  if (!parts?.[1] || !parts[2]) return undefined;
  const quadrant = ["UR", "UL", "LL", "LR"].indexOf(parts[1]);
  const primary = parts[2] >= "A";
  const position = primary ? parts[2].charCodeAt(0) - 64 : Number(parts[2]);
  return `${quadrant + (primary ? 5 : 1)}${position}`;
}

export type ToothGroup = "incisor or canine" | "premolar" | "molar";

/** The group a tooth belongs to; the back two primary teeth are molars. */
export function toothGroup(iso: string): ToothGroup {
  const quadrant = Number(iso[0]);
  const position = Number(iso[1]);
  if (position <= 3) return "incisor or canine";
  return quadrant >= 5 || position >= 6 ? "molar" : "premolar";
}
