import type { Notation } from "../mapping/numbers";
import type { RawRow } from "../raw-row";
import type { Reading } from "./recognised";

/** Gathers what the cells of a file tell of its decimal sign. */
export function decimalVotes() {
  let comma = 0;
  let point = 0;
  let example = "";
  const thousands = new Map<Notation["thousands"], number>();
  const group = (mark: Notation["thousands"]) =>
    thousands.set(mark, (thousands.get(mark) ?? 0) + 1);
  return {
    look(cells: RawRow["cells"]) {
      for (const cell of Object.values(cells)) {
        const text = cell.trim();
        if (text.length > 24 || !/^[-+]?\d/.test(text) || !/[.,'\s\u00a0\u202f]/.test(text))
          continue;
        const parts =
          /^[-+]?(\d{1,3}(?:([.,' \u00a0\u2009\u202f])\d{3})+|\d+)(?:([.,])(\d+))?$/.exec(text);
        if (!parts) continue;
        const [, whole = "", mark, sign, fraction = ""] = parts;
        if (mark && (!sign || mark !== sign)) {
          // 1.234 alone may be either; with a decimal sign after it, or a second group, it is settled.
          const settled = sign !== undefined || /[.,].*[.,]/.test(whole) || !/[.,]/.test(mark);
          if (!settled) {
            example ||= text;
            if (/^[-+]?0/.test(text)) mark === "," ? comma++ : point++;
            continue;
          }
          group(/[.,']/.test(mark) ? (mark as "." | "," | "'") : " ");
          if (!sign) mark === "." ? comma++ : mark === "," ? point++ : undefined;
        }
        if (sign && fraction) sign === "," ? comma++ : point++;
      }
    },
    /** The notation, a sentence of it, and an example where it cannot be told. */
    told(): { notation: Notation; reading: Reading; unsettled: string | null } {
      const decimal = comma > point ? "," : ".";
      const mark = [...thousands.keys()].find((one) => one !== decimal) ?? "";
      const unsettled = comma === 0 && point === 0 && example !== "" ? example : null;
      const seen = decimal === "," ? comma : point;
      return {
        notation: { decimal, thousands: mark },
        unsettled,
        reading: {
          about: "decimal",
          sure: unsettled === null && Math.min(comma, point) === 0 ? "certain" : "likely",
          why:
            seen === 0
              ? unsettled === null
                ? "No number has decimals."
                : `Numbers as ${unsettled} may be read in two ways.`
              : `${seen} numbers have decimals after a ${decimal === "," ? "comma" : "point"}${Math.min(comma, point) > 0 ? `, ${Math.min(comma, point)} after the other sign` : ""}.`,
        },
      };
    },
  };
}
