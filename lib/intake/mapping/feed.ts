import { z } from "zod";
import { sourceUnits } from "./source-units";

const cellText = z.string().max(200);

/** What one word of a column stands for. */
const word = z
  .strictObject({
    word: cellText.describe(
      "The cell, whatever its case and blanks; {number} stands for any one number, in the file's own notation. Empty: the empty cell.",
    ),
    means: cellText
      .nullable()
      .describe(
        "What it is in the record format, where {number} is the number found, written with a point; null: not recorded. A row whose word for a required field is null makes no row of that table.",
      ),
    also: z
      .record(z.string(), cellText)
      .optional()
      .describe(
        'Other fields of the same table that the same word fills: { "concentration_pct": "{number}" }.',
      ),
  })
  .describe("A word of the file and what it means.");
export type Word = z.infer<typeof word>;

const clock = z
  .strictObject({
    day: z
      .enum(["year-month-day", "day-month-year", "month-day-year", "unix-s", "unix-ms"])
      .describe(
        "The order in which a day is written, whatever parts it; or seconds or milliseconds since 1970 in UTC.",
      ),
    hours: z
      .union([z.literal(24), z.literal(12)])
      .default(24)
      .describe("12: hours with AM or PM."),
  })
  .describe("How days and times of day are written.");
export type Clock = z.infer<typeof clock>;

const fromColumns = z
  .strictObject({
    columns: z
      .array(z.string().min(1).max(200))
      .min(1)
      .max(3)
      .describe(
        "The column that feeds the field; of a day and a time of day in two columns, both, joined by a blank.",
      ),
    words: z
      .array(word)
      .max(2000)
      .optional()
      .describe("What its words mean. A cell that is none of them is taken as it stands."),
    unit: z
      .enum(sourceUnits)
      .optional()
      .describe("Unit of the file's number, where it is not the field's own; it is converted."),
    clock: clock.optional().describe("Of fields that hold a moment or a day."),
  })
  .describe("A field fed by columns of the file.");

const always = z.strictObject({ always: cellText.min(1) }).describe("The same in every row.");
const numbered = z
  .strictObject({ numbered: z.literal(true) })
  .describe(
    "An order within the visit and canal, where the file has none: a running number as the rows come; of rows that find their visit by time, the time of day as 92005 for 09:20:05, so that a log that overlaps the last one is known again.",
  );

/** What fills one field of a table. */
export const feed = z.union([fromColumns, always, numbered]);
export type Feed = z.infer<typeof feed>;
export type ColumnFeed = z.infer<typeof fromColumns>;
