import { answering } from "@/app/_parts/answering";
import { recordsReach } from "@/lib/access/reach";
import { testDraft, testSoFar } from "@/lib/reports/waiting-draft";
import { inWords, sentJson } from "../../../../sent-json";

type Context = { params: Promise<{ id: string }> };

/** Begins the test of a mapping on the whole of a file that waits. */
export async function POST(request: Request, context: Context): Promise<Response> {
  return answering(
    "POST /api/records/waiting/[id]/test",
    async (viewer) => {
      const reach = recordsReach(viewer);
      const sent = await sentJson(request);
      if (sent instanceof Response) return sent;
      const { id } = await context.params;
      const answer = await testDraft(reach, Number(id), sent.json);
      if (!answer) return inWords(404, "This file waits no longer.");
      return Response.json(answer, { status: "sentence" in answer ? 400 : 200 });
    },
    [["file", (await context.params).id]],
  );
}

/** How far the test of the mapping is, or what it found. */
export async function GET(_: Request, context: Context): Promise<Response> {
  return answering(
    "GET /api/records/waiting/[id]/test",
    async (viewer) => {
      const { id } = await context.params;
      const answer = await testSoFar(recordsReach(viewer), Number(id));
      return answer ? Response.json(answer) : inWords(404, "This file waits no longer.");
    },
    [["file", (await context.params).id]],
  );
}
