import { answering } from "@/app/_parts/answering";
import { preparedReport } from "@/lib/reports/audits/schedules";
import { inWords } from "../../../../sent-json";

/** A report that was prepared by itself, as it was made. */
export async function GET(
  _request: Request,
  context: { params: Promise<{ id: string; period: string }> },
): Promise<Response> {
  return answering("GET /api/quality/prepared/[id]/[period]", async (viewer) => {
    const { id, period } = await context.params;
    const file = await preparedReport(viewer, id, period);
    if (!file) return inWords(404, "There is no such prepared report among those you may see.");
    return new Response(file.bytes, {
      headers: {
        "content-type": "application/octet-stream",
        "content-disposition": `attachment; filename="${file.name}"`,
        "cache-control": "no-store",
      },
    });
  });
}
