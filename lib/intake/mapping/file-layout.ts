import { z } from "zod";

/** How the text of a file is encoded. */
export const encodings = ["utf-8", "utf-16le", "utf-16be", "windows-1252"] as const;
export type Encoding = (typeof encodings)[number];

/** How a file that is not in the record format is written: what has to be known before its cells can be told apart. */
export const fileLayout = z
  .strictObject({
    kind: z
      .enum(["separated", "workbook", "json", "json-lines"])
      .describe(
        "Text with separated cells; an XLSX workbook; one JSON array; one JSON object a line.",
      ),
    encoding: z.enum(encodings).default("utf-8").describe("Of separated text alone."),
    separator: z
      .string()
      .min(1)
      .max(1)
      .default(",")
      .describe("Between two cells of separated text."),
    quote: z
      .enum(['"', "'", ""])
      .default('"')
      .describe("Round a cell that has the separator in it; empty: quotes have no meaning."),
    headerLine: z
      .int()
      .min(1)
      .max(1000)
      .default(1)
      .describe("Line of the column names, counted from 1; what stands above it is passed over."),
    sheet: z
      .string()
      .max(200)
      .optional()
      .describe("Of a workbook with several sheets, the name of the one."),
    decimal: z
      .enum([".", ","])
      .default(".")
      .describe("Between the whole and the fraction of a number."),
    thousands: z
      .enum(["", ".", ",", " ", "'"])
      .default("")
      .describe(
        "Between groups of three digits; a blank also stands for the narrow and the unbreakable one.",
      ),
  })
  .describe("How the file is written.");
export type FileLayout = z.infer<typeof fileLayout>;
