import { answering } from "@/app/_parts/answering";
import { rightly } from "@/app/_parts/rightly";
import { upkeepExport } from "@/lib/reports/upkeep-page";

/** The upkeep calendars as CSV: ?period=2026-Q3&practice=P1&chair=P1-2. */
export async function GET(request: Request): Promise<Response> {
  return answering(
    "GET /api/quality/upkeep",
    async (viewer) => {
      const address = Object.fromEntries(new URL(request.url).searchParams);
      const file = await rightly(() => upkeepExport(viewer, address));
      if ("wrong" in file) return Response.json({ sentence: file.wrong }, { status: 400 });
      return new Response(file.text, {
        headers: {
          "content-type": "text/csv; charset=utf-8; header=present",
          "content-disposition": `attachment; filename="${file.name}"`,
          "cache-control": "no-store",
        },
      });
    },
    new URL(request.url).searchParams,
  );
}
