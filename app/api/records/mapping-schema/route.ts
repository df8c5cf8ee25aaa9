import { answering } from "@/app/_parts/answering";
import { mappingSchemaFile } from "@/lib/reports/mapping-schema-file";

/** The JSON Schema of a mapping. */
export async function GET(): Promise<Response> {
  return answering(
    "GET /api/records/mapping-schema",
    (viewer) =>
      new Response(mappingSchemaFile(viewer), {
        headers: {
          "content-type": "application/schema+json; charset=utf-8",
          "content-disposition": 'attachment; filename="mapping.schema.json"',
        },
      }),
  );
}
