import { answering } from "@/app/_parts/answering";
import { recordsReach } from "@/lib/access/reach";
import { mappingFile } from "@/lib/reports/mappings-change";
import { inWords } from "../../../sent-json";

/** A kept mapping as its JSON file, the newest version or ?version=N. */
export async function GET(
  request: Request,
  context: { params: Promise<{ name: string }> },
): Promise<Response> {
  return answering("GET /api/records/mappings/[name]", async (viewer) => {
    const { name } = await context.params;
    const asked = new URL(request.url).searchParams.get("version");
    const reach = recordsReach(viewer);
    const isNamed = !name.includes("\0") && (asked === null || /^[1-9]\d{0,8}$/.test(asked));
    const version = asked === null ? undefined : Number(asked);
    const file = isNamed ? await mappingFile(reach, name, version) : null;
    if (!file) return inWords(404, "There is no such mapping.");
    return new Response(file.text, {
      headers: {
        "content-type": "application/json; charset=utf-8",
        "content-disposition": `attachment; filename="mapping.json"; filename*=UTF-8''${encodeURIComponent(file.filename)}`,
      },
    });
  });
}
