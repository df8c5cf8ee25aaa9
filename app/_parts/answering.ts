import { Refused } from "@/lib/access/refused";
import type { Viewer } from "@/lib/access/viewer";
import { writeDone } from "@/lib/reports/log/note";
import { asWhoAsks, viewerOrNobody } from "@/lib/reports/viewer";
import type { Logged } from "@/lib/views/log/logged-pages";
import { loggedRoutes, type RouteName } from "@/lib/views/log/logged-routes";
import { seen } from "./seen";

/**
 * Answers a request to a route: 401 where nobody is signed in, 403 with the sentence where it is refused. What was answered leaves a line
 * in the log before it goes out, so that no file leaves without one.
 *
 * @param about numbers and codes of what it answers, for the log
 */
export async function answering(
  route: RouteName,
  work: (viewer: Viewer) => Response | Promise<Response>,
  about: Iterable<readonly [string, unknown]> = [],
): Promise<Response> {
  const viewer = await viewerOrNobody();
  if (!viewer) return inWords(401, "Sign in first.");
  const logged: Logged = loggedRoutes[route];
  if (viewer.due) return inWords(403, "Open the tool first: your account has something to do.");
  try {
    const answer = await asWhoAsks(() => work(viewer), viewer);
    // A plain form is led on with 303.
    if (answer.status >= 400 || "none" in logged) return answer;
    if (logged.kind === "saw" || logged.hourly) await seen(logged.kind, route, about);
    else await writeDone(logged, { person: viewer.userId, what: route }, about);
    return answer;
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    await seen("refused", route, []);
    return inWords(403, error.message);
  }
}

function inWords(status: number, sentence: string): Response {
  return Response.json({ sentence }, { status });
}
