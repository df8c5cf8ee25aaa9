import { answering } from "@/app/_parts/answering";
import { ownSummaryFile } from "@/lib/reports/audits/report-file";
import { sentPdf } from "../../../../sent-pdf";

/** The viewer's own summary of an audit as PDF; ?reflection=yes with their reflection in it. */
export async function GET(
  request: Request,
  context: { params: Promise<{ id: string }> },
): Promise<Response> {
  return answering(
    "GET /api/clinician/audits/[id]/summary",
    async (viewer) => {
      const address = Object.fromEntries(new URL(request.url).searchParams);
      return sentPdf(await ownSummaryFile(viewer, (await context.params).id, address));
    },
    [["audit", (await context.params).id]],
  );
}
