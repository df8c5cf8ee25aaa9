import { answering } from "@/app/_parts/answering";
import { rightly } from "@/app/_parts/rightly";
import { qualityExport } from "@/lib/reports/quality-report";

/** The adherence report as a file: ?period=2026-Q3&practice=P1&format=csv, xlsx, json, fhir or pdf. */
export async function GET(request: Request): Promise<Response> {
  return answering(
    "GET /api/quality/adherence",
    async (viewer) => {
      const address = Object.fromEntries(new URL(request.url).searchParams);
      const file = await rightly(() => qualityExport(viewer, address));
      if ("wrong" in file) return Response.json({ sentence: file.wrong }, { status: 400 });
      return new Response(file.bytes, {
        headers: {
          "content-type": file.type,
          "content-disposition": `attachment; filename="${file.name}"`,
          "cache-control": "no-store",
        },
      });
    },
    new URL(request.url).searchParams,
  );
}
