/** A unit as a person knows it, by its UCUM code. */
export function unitWords(code: string): string {
  return words[code] ?? code;
}

const words: Readonly<Record<string, string>> = {
  uL: "µL",
  cm3: "cm³ (cc)",
  mm3: "mm³",
  "uL/s": "µL/s",
  ms: "ms (thousandths of a second)",
  s: "seconds",
  min: "minutes, as 2.75",
  h: "hours, as 0.05",
  "min:s": "minutes:seconds, as 2:45",
  "h:min:s": "hours:minutes:seconds, as 0:02:45",
  "ISO 8601": "ISO 8601, as PT2M45S",
  um: "µm",
  "10.um": "1/100 mm",
  "[in_i]": "inch",
  deg: "degrees",
  rad: "radians",
  "%": "per cent",
  "1": "a share of 1, as 0.05",
  "/min": "a minute",
  "/s": "a second",
  "N.cm": "N·cm",
  "N.m": "N·m",
  "mN.m": "mN·m",
  "gf.cm": "gf·cm",
};
