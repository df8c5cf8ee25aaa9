import { answering } from "@/app/_parts/answering";
import { formatFile } from "@/lib/reports/record-format";

/** A blank template, an example or the Table Schema of one table of the record format. */
export async function GET(
  _: Request,
  context: { params: Promise<{ file: string }> },
): Promise<Response> {
  return answering("GET /api/records/format/[file]", async (viewer) => {
    const { file: name } = await context.params;
    const file = formatFile(viewer, name);
    if (!file)
      return Response.json(
        { sentence: "There is no such file of the record format." },
        { status: 404 },
      );
    return new Response(file.text, {
      headers: {
        "content-type": file.type,
        "content-disposition": `attachment; filename="${name}"`,
      },
    });
  });
}
