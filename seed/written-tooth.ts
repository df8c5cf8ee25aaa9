/** A tooth of ISO 3950 as a practice writes it: the same two digits, or Palmer's text form (16 is UR6). */
export function writtenTooth(iso: string, notation: "fdi" | "palmer"): string {
  return notation === "fdi" ? iso : `${["UR", "UL", "LL", "LR"][Number(iso[0]) - 1]}${iso[1]}`;
}
