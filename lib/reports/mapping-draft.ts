import { createHash } from "node:crypto";
import { z } from "zod";
import { type Mapping, mappingSchema } from "@/lib/intake/mapping/mapping";
import { tableNames } from "@/lib/records/tables";
import { canonicalJson } from "@/lib/views/canonical-json";

/** A mapping that is being made: it may have no name and no table yet. */
const draftSchema = mappingSchema.extend({
  name: z.string().max(80),
  tables: z.array(mappingSchema.shape.tables.element).max(tableNames.length),
});

/** Reads a draft as a page sends it or as it was kept; else what is wrong with it, place by place. */
export function readDraft(value: unknown): { draft: Mapping } | { wrong: string } {
  const read = draftSchema.safeParse(value);
  return read.success ? { draft: read.data } : { wrong: wrongPlaces(read.error) };
}

/** What makes two mappings read a file alike: all but what they are called. */
export function digestOf(mapping: Mapping): string {
  const { name: _, says: __, ...rest } = mapping;
  return createHash("sha256").update(canonicalJson(rest)).digest("hex");
}

function wrongPlaces(error: z.ZodError): string {
  return error.issues
    .slice(0, 3)
    .map(({ path, message }) => `${path.map(String).join(" › ") || "the whole"}: ${message}`)
    .join("; ");
}
