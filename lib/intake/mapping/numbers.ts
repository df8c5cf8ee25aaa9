import type { FileLayout } from "./file-layout";

export type Notation = Pick<FileLayout, "decimal" | "thousands">;

/** Reads numbers in the file's notation, written with a point; undefined where it is none in that notation. */
export function numberReader(notation: Notation): (text: string) => string | undefined {
  const { decimal, thousands } = notation;
  const shape = new RegExp(`^${numberShape(notation)}$`);
  const mark = thousands === "" ? undefined : groupMark(thousands, "g");
  return (text) => {
    if (!shape.test(text)) return undefined;
    const bare = mark ? text.replace(mark, "") : text;
    return decimal === "," ? bare.replace(",", ".") : bare;
  };
}

/** The shape of a number in the file's notation, as a regular expression without groups. */
export function numberShape({ decimal, thousands }: Notation): string {
  const point = decimal === "," ? "," : "\\.";
  const whole =
    thousands === "" ? "\\d+" : `(?:\\d{1,3}(?:${groupMark(thousands).source}\\d{3})+|\\d+)`;
  return `[-+]?(?:${whole}(?:${point}\\d*)?|${point}\\d+)(?:[eE][-+]?\\d{1,3})?`;
}

/** A blank between groups is written in several ways: plain, unbreakable, thin and narrow. */
function groupMark(thousands: string, flags?: string): RegExp {
  if (thousands === " ") return new RegExp("[ \\u00a0\\u2009\\u202f]", flags);
  if (thousands === "'") return new RegExp("['\\u2019]", flags);
  return new RegExp(thousands === "." ? "\\." : thousands, flags);
}
