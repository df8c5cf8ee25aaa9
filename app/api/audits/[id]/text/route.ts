import { answering } from "@/app/_parts/answering";
import { leadReach } from "@/lib/access/reach";
import { auditTexts, keepAuditText } from "@/lib/reports/audits/text-sync";
import { inWords, sentJson } from "../../../sent-json";

type Context = { params: Promise<{ id: string }> };
const none = "There is no such audit among those you run.";

/** Every text of an audit as it is now. */
export async function GET(_request: Request, context: Context): Promise<Response> {
  return answering(async (viewer) => {
    const texts = await auditTexts(viewer, (await context.params).id);
    return texts ? Response.json(texts) : inWords(404, none);
  });
}

/** Keeps a text as it is typed: {key, begun, text}; answers what is in force, with what others typed meanwhile in it. */
export async function POST(request: Request, context: Context): Promise<Response> {
  return answering(async (viewer) => {
    leadReach(viewer);
    const sent = await sentJson(request);
    if (sent instanceof Response) return sent;
    const kept = await keepAuditText(viewer, (await context.params).id, sent.json);
    if (!kept) return inWords(404, none);
    return "wrong" in kept ? inWords(400, kept.wrong) : Response.json(kept);
  });
}
