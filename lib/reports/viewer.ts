import { cookies, headers } from "next/headers";
import { redirect } from "next/navigation";
import { cache } from "react";
import type { Viewer } from "@/lib/access/viewer";
import { viewerOf } from "@/lib/store/people/viewer-of";
import { asViewer } from "@/lib/store/wall/as-whom";

/** The request's headers, with the cookies as an action of this very request has left them. */
export async function askedWith(): Promise<Headers> {
  const asked = new Headers(await headers());
  asked.set("cookie", (await cookies()).toString());
  return asked;
}

/** Who is asking; null where nobody is signed in. Read once a request. */
export const viewerOrNobody = cache(
  async (): Promise<Viewer | null> => viewerOf(await askedWith()),
);

/** Does the work as whoever is asking: the database shows what they may see, and nothing where nobody is signed in. */
export async function asWhoAsks<Answer>(
  work: () => Answer | Promise<Answer>,
  known?: Viewer,
): Promise<Answer> {
  const viewer = known ?? (await viewerOrNobody());
  return viewer ? asViewer(viewer, work) : work();
}

/** Who is asking, where also that is open which they have to do first: their own account. */
export async function ownViewer(): Promise<Viewer> {
  const viewer = await viewerOrNobody();
  if (!viewer) redirect("/sign-in");
  return viewer;
}

/**
 * Who is asking, for pages: nobody is led to /sign-in. A request without a session's cookie has been led there
 * already with its address kept (next.config.ts); here it is a session that has ended. Whoever has something to do first
 * is led to it.
 */
export async function currentViewer(): Promise<Viewer> {
  const viewer = await ownViewer();
  if (viewer.due) redirect("/account");
  return viewer;
}
