import { recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { mappingJsonSchema } from "@/lib/intake/mapping/json-schema";

/** The JSON Schema of a mapping, as text. @throws Refused */
export function mappingSchemaFile(viewer: Viewer): string {
  recordsReach(viewer);
  return `${JSON.stringify(mappingJsonSchema(), null, 2)}\n`;
}
