import { z } from "zod";
import type { RawRow, Trouble } from "./raw-row";

const item = z.record(z.string(), z.unknown());
const cell = z.union([z.string(), z.number(), z.boolean(), z.null()]);

/**
 * The text of a JSON object as a row: true is yes, false no, null not recorded. A nested value, a name that comes twice
 * and a whole number too large to be exact are told as troubles beside the cells that are right.
 *
 * @param nameOf how names are compared; those of the record format in lower case
 */
export function jsonRow(
  text: string,
  tooLong: boolean,
  line: number,
  nameOf: (key: string) => string = (key) => key.trim().toLowerCase(),
): RawRow {
  if (tooLong)
    return noRow(line, "the item is too long for a row; is a quote or brace never closed?");
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    return noRow(line, "it cannot be read as JSON; mend its quotes, commas and braces");
  }
  const checked = item.safeParse(parsed);
  if (!checked.success)
    return noRow(line, "a row is an object in braces, each value by its column's name");
  const cells: Record<string, string> = {};
  const troubles: Trouble[] = [];
  for (const [key, value] of Object.entries(checked.data)) {
    const column = nameOf(key);
    const read = cell.safeParse(value);
    if (Object.hasOwn(cells, column))
      troubles.push({
        column,
        found: "the column twice",
        remedy: "a row has each column once; take one out",
      });
    else if (!read.success)
      troubles.push({
        column,
        found: "something nested",
        remedy: "write one text, number, true, false or null",
      });
    else if (
      typeof read.data === "number" &&
      Number.isInteger(read.data) &&
      !Number.isSafeInteger(read.data)
    ) {
      troubles.push({
        column,
        found: "a number too long to be exact",
        remedy: "put it in quotes, as it is a code and no number",
      });
    } else cells[column] = asText(read.data);
  }
  return { line, cells, ...(troubles.length > 0 ? { troubles } : {}) };
}

function asText(value: string | number | boolean | null): string {
  if (value === null) return "";
  return typeof value === "boolean" ? (value ? "yes" : "no") : String(value);
}

function noRow(line: number, remedy: string): RawRow {
  return {
    line,
    cells: {},
    troubles: [{ found: "something else than a row", remedy }],
    misplaced: true,
  };
}
