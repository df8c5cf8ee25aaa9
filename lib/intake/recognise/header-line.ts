import type { Reading } from "./recognised";

/** A row as cut, its cells by place. */
export type CutRow = { readonly line: number; readonly cells: readonly string[] };

/**
 * The header of a table so many cells wide: the first row that has them all, each a text of its own that is neither number nor date.
 *
 * @param least fewer cells will do, where some row has one beside the table
 */
export function headerLineOf(
  rows: readonly CutRow[],
  count: number,
  least = count,
): Reading & { line: number } {
  const about = "headerLine";
  const looksRight = ({ cells }: CutRow) => {
    const names = cells.map((cell) => cell.trim()).filter(Boolean);
    return (
      cells.length >= least &&
      cells.length <= count &&
      names.length >= Math.ceil(count * 0.8) &&
      new Set(names).size === names.length &&
      names.every((name) => !/^[\d\s.,:/+-]+$/.test(name))
    );
  };
  const found = rows.find(looksRight);
  if (!found) {
    const line = rows.find(({ cells }) => cells.length === count)?.line ?? 1;
    const why = `No line looks like the names of columns; line ${line} is taken.`;
    return { about, line, sure: "likely", why };
  }
  if (found === rows[0])
    return {
      ...{ about, line: found.line, sure: "certain" },
      why: "The first line holds a different name in each cell.",
    };
  return {
    ...{ about, line: found.line, sure: "likely" },
    why: `Line ${found.line} is the first with a different name in each of its ${found.cells.length} cells; what stands above is passed over.`,
  };
}
