import type { SourceUnit } from "../mapping/source-units";

/** Units as people write them, without blanks and points; by UCUM where it has them. */
const written = new Map<string, SourceUnit>(
  Object.entries({
    ...{ ml: "mL", cc: "cm3", cm3: "cm3", ccm: "cm3", ul: "uL", dl: "dL", l: "L" },
    ...{ "ml/min": "mL/min", "cc/min": "mL/min", "l/min": "L/min", "ul/s": "uL/s" },
    ...{ "ml/s": "mL/s", "ml/sec": "mL/s", "cc/s": "mL/s", "cm3/s": "mL/s", "ml/h": "mL/h" },
    ...{ s: "s", sec: "s", secs: "s", sek: "s", seconds: "s", sekunden: "s", secondes: "s" },
    ...{ ms: "ms", min: "min", mins: "min", minutes: "min", minuten: "min", minutos: "min" },
    ...{ h: "h", "min:s": "min:s", "mm:ss": "min:s", "m:ss": "min:s", "hh:mm:ss": "h:min:s" },
    ...{ mm: "mm", cm: "cm", um: "um", inch: "[in_i]", in: "[in_i]" },
    ...{ "°": "deg", deg: "deg", grad: "deg", rad: "rad", "%": "%", pct: "%" },
    ...{ rpm: "/min", "/min": "/min", "u/min": "/min", "tr/min": "/min", hz: "/s", "/s": "/s" },
    ...{ ncm: "N.cm", "n*cm": "N.cm", mnm: "mN.m", gcm: "gf.cm", "g*cm": "gf.cm", gfcm: "gf.cm" },
  } as const),
);

/** A unit by how people write it; undefined where it is none that is known. */
export function unitNamed(text: string): SourceUnit | undefined {
  const bare = text
    .normalize("NFC")
    .replace(/\s+/g, "")
    .replace(/[µμ]/g, "u")
    .replace(/³/g, "3")
    .replace(/[·×]/g, "*")
    .toLowerCase();
  return written.get(bare) ?? written.get(bare.replace(/\./g, ""));
}

/** The unit at the end of a column's name: in brackets, or its last word or two as in flow_ml_s. */
export function unitOfName(name: string): SourceUnit | undefined {
  const inside = /[([]([^()[\]]+)[)\]]\s*$/.exec(name)?.[1];
  if (inside) return unitNamed(inside);
  const words = name.split(/[\s_,]+/).filter(Boolean);
  const [last = "", before = ""] = [...words].reverse();
  return unitNamed(`${before}/${last}`) ?? unitNamed(last);
}
