import { answering } from "@/app/_parts/answering";
import { fromAddress } from "@/app/_parts/from-address";
import { rightly } from "@/app/_parts/rightly";
import { unitsExport } from "@/lib/reports/units";

/** The units of a measure or criterion as CSV: ?period=2026-Q3&practice=P1&outcome=not-met. */
export async function GET(
  request: Request,
  props: { params: Promise<{ measure: string[] }> },
): Promise<Response> {
  const measure = (await props.params).measure.map((part) => fromAddress(part)).join("/");
  return answering(
    "GET /api/units/[...measure]",
    async (viewer) => {
      const address = Object.fromEntries(new URL(request.url).searchParams);
      const file = await rightly(() => unitsExport(viewer, measure, address));
      if ("wrong" in file) return Response.json({ sentence: file.wrong }, { status: 400 });
      return new Response(file.text, {
        headers: {
          "content-type": "text/csv; charset=utf-8; header=present",
          "content-disposition": `attachment; filename="${file.name}"`,
          "cache-control": "no-store",
        },
      });
    },
    [["measure", measure], ...new URL(request.url).searchParams],
  );
}
