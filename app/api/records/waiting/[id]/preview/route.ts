import { answering } from "@/app/_parts/answering";
import { recordsReach } from "@/lib/access/reach";
import { keepDraft } from "@/lib/reports/waiting-draft";
import { inWords, sentJson } from "../../../../sent-json";

/** Keeps the mapping of a file that waits as far as it is made, and answers what the file's first rows become by it. */
export async function POST(
  request: Request,
  context: { params: Promise<{ id: string }> },
): Promise<Response> {
  return answering(
    "POST /api/records/waiting/[id]/preview",
    async (viewer) => {
      const reach = recordsReach(viewer);
      const sent = await sentJson(request);
      if (sent instanceof Response) return sent;
      const { id } = await context.params;
      const answer = await keepDraft(reach, Number(id), sent.json);
      if (!answer) return inWords(404, "This file waits no longer.");
      return Response.json(answer, { status: "sentence" in answer ? 400 : 200 });
    },
    [["file", (await context.params).id]],
  );
}
