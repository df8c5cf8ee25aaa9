import { answering } from "@/app/_parts/answering";
import { waitingWords } from "@/lib/reports/waiting-words-of";
import { inWords } from "../../../../sent-json";

/** The different words of a column (?column=…) of a file that waits. */
export async function GET(
  request: Request,
  context: { params: Promise<{ id: string }> },
): Promise<Response> {
  return answering(
    "GET /api/records/waiting/[id]/words",
    async (viewer) => {
      const { id } = await context.params;
      const column = new URL(request.url).searchParams.get("column") ?? "";
      const words = await waitingWords(viewer, Number(id), column);
      return words ? Response.json(words) : inWords(404, "There is no such file or column.");
    },
    [["file", (await context.params).id]],
  );
}
