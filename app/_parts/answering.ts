import { Refused } from "@/lib/access/refused";
import type { Viewer } from "@/lib/access/viewer";
import { viewerOrNobody } from "@/lib/reports/viewer";

/** Answers a request to a route: 401 where nobody is signed in, 403 with the sentence where it is refused. */
export async function answering(
  work: (viewer: Viewer) => Response | Promise<Response>,
): Promise<Response> {
  const viewer = await viewerOrNobody();
  if (!viewer) return inWords(401, "Sign in first.");
  if (viewer.due) return inWords(403, "Open the tool first: your account has something to do.");
  try {
    return await work(viewer);
  } catch (error) {
    if (error instanceof Refused) return inWords(403, error.message);
    throw error;
  }
}

function inWords(status: number, sentence: string): Response {
  return Response.json({ sentence }, { status });
}
