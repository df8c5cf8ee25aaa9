import { answering } from "@/app/_parts/answering";
import { recordsReach } from "@/lib/access/reach";
import { UploadRefused } from "@/lib/reports/receive-upload";
import { startImport } from "@/lib/reports/start-import";

/**
 * Takes record files as form data and begins their import. To a page it answers with the address of the import's
 * page; a plain form is led there.
 */
export async function POST(request: Request): Promise<Response> {
  return answering("POST /api/records/import", async (viewer) => {
    const reach = recordsReach(viewer);
    const site = request.headers.get("sec-fetch-site");
    // A form of another page must not bring records in under the keeper's name.
    if (site && site !== "same-origin" && site !== "none")
      return refused(request, 403, "This form is not of this tool.");
    if (!request.body) return refused(request, 400, "Choose at least one file.");
    try {
      const type = request.headers.get("content-type") ?? "";
      const { importId, waiting } = await startImport(
        reach,
        request.body as unknown as AsyncIterable<Uint8Array>,
        type,
      );
      const location = placeOf(importId, waiting.length);
      if (wantsJson(request)) return Response.json({ location }, { status: 202 });
      return new Response(null, { status: 303, headers: { location } });
    } catch (error) {
      if (!(error instanceof UploadRefused)) throw error;
      return refused(request, 400, error.message);
    }
  });
}

/** Files that wait for a mapping come first: they are what the person has to do. */
function placeOf(importId: number | undefined, waiting: number): string {
  if (waiting === 0) return `/records/imports/${importId}`;
  return importId === undefined ? "/records/waiting" : `/records/waiting?import=${importId}`;
}

function refused(request: Request, status: number, sentence: string): Response {
  if (wantsJson(request)) return Response.json({ sentence }, { status });
  return new Response(`${sentence} Go back and try again.\n`, {
    status,
    headers: { "content-type": "text/plain; charset=utf-8" },
  });
}

function wantsJson(request: Request): boolean {
  return request.headers.get("accept")?.includes("application/json") === true;
}
