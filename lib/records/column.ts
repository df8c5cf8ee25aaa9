/**
 * A column of the record format. Its `type` says how a cell is read and how it is stored:
 *
 * | type    | cell                                             | value in a checked row        |
 * |---------|--------------------------------------------------|-------------------------------|
 * | code    | any short text without control characters        | string                        |
 * | choice  | one of `choices`                                 | string                        |
 * | flag    | yes or no                                        | boolean                       |
 * | number  | decimal number with a point, within the range    | number                        |
 * | whole   | whole number within the range                    | number                        |
 * | count   | yes, no or a whole number (how many of the uses) | number (yes 1, no 0)          |
 * | instant | ISO 8601; without an offset, practice local time | string, ISO 8601 in UTC       |
 * | day     | ISO 8601 calendar day                            | string, YYYY-MM-DD            |
 * | canal   | a canal name of the trade                        | string, in its standard case  |
 * | tooth   | a tooth in the row's notation                    | string, two digits (ISO 3950) |
 * | patient | any stable reference                             | string, keyed hash            |
 */
export type ColumnType =
  | "code"
  | "choice"
  | "flag"
  | "number"
  | "whole"
  | "count"
  | "instant"
  | "day"
  | "canal"
  | "tooth"
  | "patient";

export type Column = {
  readonly name: string;
  readonly type: ColumnType;
  /** A row without it is held. */
  readonly required?: boolean;
  /** Part of what tells one row from another. */
  readonly key?: boolean;
  readonly choices?: readonly string[];
  /** A practice's own codes are taken beside the choices: see own-code. */
  readonly alsoOwn?: true;
  /** Lowest value allowed. */
  readonly least?: number;
  /** Highest value allowed. */
  readonly most?: number;
  /** The value must be greater than this, not equal to it. */
  readonly over?: number;
  /** UCUM unit of a number. */
  readonly unit?: string;
  /** What the column holds, in one plain sentence. */
  readonly says: string;
  /** A cell that would be right. */
  readonly example: string;
};

/** A value of a checked row. Absent means not recorded: never "no" and never 0. */
export type Value = string | number | boolean;
export type Values = Readonly<Record<string, Value | undefined>>;

/** Is a value of the type a number. */
export function columnTypeHoldsNumber(type: ColumnType): boolean {
  return type === "number" || type === "whole" || type === "count";
}
