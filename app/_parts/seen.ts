import { after } from "next/server";
import { aboutOf } from "@/lib/reports/log/about-of";
import { noteSeen, writeNoted } from "@/lib/reports/log/note";
import { viewerOrNobody } from "@/lib/reports/viewer";

/** Notes for the log, once an hour, that the viewer saw something, was refused it or types in it; written when the answer has gone out. */
export async function seen(
  kind: Parameters<typeof noteSeen>[0]["kind"],
  what: string,
  about: Iterable<readonly [string, unknown]>,
): Promise<void> {
  const viewer = await viewerOrNobody();
  if (!viewer) return;
  if (noteSeen({ kind, person: viewer.userId, what, about: aboutOf(about) })) after(writeNoted);
}
