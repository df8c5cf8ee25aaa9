import { answering } from "@/app/_parts/answering";
import { auditReportFile } from "@/lib/reports/audits/report-file";
import { sentPdf } from "../../../sent-pdf";

/** The report of an audit as PDF: ?clinicians=none, redrawn or codes, ?version= of a signed one. */
export async function GET(
  request: Request,
  context: { params: Promise<{ id: string }> },
): Promise<Response> {
  return answering(
    "GET /api/audits/[id]/report",
    async (viewer) => {
      const address = Object.fromEntries(new URL(request.url).searchParams);
      return sentPdf(await auditReportFile(viewer, (await context.params).id, address));
    },
    [["audit", (await context.params).id], ...new URL(request.url).searchParams],
  );
}
