import { z } from "zod";
import { tableNames } from "@/lib/records/tables";
import { isTimeZone } from "@/lib/records/time-zone";
import { feed } from "./feed";
import { fieldOf, fieldsOf } from "./field-of";
import { fileLayout } from "./file-layout";
import { visitFields } from "./visit-fields";

/** The file is read once for each. */
const mostTables = 40;

const condition = z
  .strictObject({
    column: z.string().min(1).max(200),
    is: z
      .array(z.string().max(200))
      .optional()
      .describe("The cell is one of these; empty text is the empty cell."),
    not: z.array(z.string().max(200)).optional().describe("The cell is none of these."),
  })
  .describe(
    "A row of the file feeds the table only where this holds, whatever the case of the words.",
  );

const tableFeed = z
  .strictObject({
    table: z.enum(tableNames),
    only: z.array(condition).max(20).optional(),
    minutes: z
      .number()
      .min(0)
      .max(240)
      .optional()
      .describe(
        "Where rows find their visit by time: so many minutes beside its beginning and end still count as within; 0 when left out.",
      ),
    fields: z
      .record(z.string(), feed)
      .describe(
        `What fills each field, by the field's name in the table, or ${visitFields.join(", ")} where rows have no session_id and find their visit.`,
      ),
  })
  .superRefine(({ table, fields }, context) => {
    for (const [field, fed] of Object.entries(fields)) {
      if ("numbered" in fed && field !== "seq")
        context.addIssue({
          code: "custom",
          path: ["fields", field],
          message: `only "seq" is numbered, not "${field}"`,
        });
      const also =
        "columns" in fed ? (fed.words ?? []).flatMap((one) => Object.keys(one.also ?? {})) : [];
      const unknown = [field, ...also].find((name) => !fieldOf(table, name));
      if (unknown === undefined) continue;
      const known = fieldsOf(table).map(({ name }) => name);
      context.addIssue({
        code: "custom",
        path: ["fields", field],
        message: `${table} have no field "${unknown}", but ${known.join(", ")}`,
      });
    }
  })
  .describe("One of the record format's tables that each row of the file feeds.");
export type TableFeed = z.infer<typeof tableFeed>;

/** How a file of another system is read: made once, kept by name and version, and shared as JSON. */
export const mappingSchema = z
  .strictObject({
    format: z.literal("canal-audit-mapping-1"),
    name: z.string().trim().min(1).max(80).describe("By which it is kept and asked for."),
    says: z
      .string()
      .max(500)
      .optional()
      .describe("What the file is and where it comes from, in words."),
    file: fileLayout.refine(({ decimal, thousands }) => decimal !== thousands, {
      path: ["thousands"],
      error: "the decimal sign cannot stand between thousands, too",
    }),
    columns: z
      .array(z.string().max(200))
      .min(1)
      .max(2000)
      .describe(
        "All column names of such a file, in their order: by these it is recognised again.",
      ),
    zone: z
      .string()
      .max(60)
      .refine(isTimeZone, "it is no time zone; write one as Europe/London")
      .optional()
      .describe("IANA time zone of its times; else that of the row's practice."),
    tables: z
      .array(tableFeed)
      .min(1)
      .max(mostTables)
      .describe(
        "Each row of the file feeds each of these; a table may come more than once, as steps where several columns are steps.",
      ),
  })
  .describe("How a file of another system feeds the tables of the record format.");
export type Mapping = z.infer<typeof mappingSchema>;
