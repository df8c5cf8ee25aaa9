import { z } from "zod";
import { notesReach, ownReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { dayAfter, type Period, period, quarterOf } from "@/lib/records/period";
import { keepOwnNote, ownNote } from "@/lib/store/notes/own-note";
import { moment } from "@/lib/views/day";

/** The clinician's private note on a quarter. */
export type NoteView = {
  readonly quarter: string;
  readonly text: string;
  readonly saved: string | null;
};

const longest = 4000;
const input = z.object({
  quarter: z.string().regex(/^\d{4}-Q[1-4]$/),
  text: z.string().max(longest, `A note holds ${longest} characters; shorten it.`),
});

/** The viewer's note on the quarter that the period ends in. */
export async function noteView(viewer: Viewer, of: Period): Promise<NoteView> {
  const quarter = quarterOf(dayAfter(of.until, -1)).name;
  const note = await ownNote(notesReach(viewer), quarter);
  return {
    quarter,
    text: note?.text ?? "",
    saved: note ? `Kept on ${moment(note.savedAt, "UTC")} UTC.` : null,
  };
}

/** Keeps the viewer's note; an empty one takes it away. @throws Refused where the viewer is no clinician */
export async function keepNote(
  viewer: Viewer,
  given: unknown,
): Promise<{ done: string } | { wrong: { text: string } }> {
  ownReach(viewer);
  const read = input.safeParse(given);
  if (!read.success)
    return {
      wrong: { text: read.error.issues[0]?.message ?? "The note cannot be kept like this." },
    };
  const text = read.data.text.trim();
  if (!period(read.data.quarter)) return { wrong: { text: "The note belongs to no quarter." } };
  await keepOwnNote(notesReach(viewer), read.data.quarter, text);
  return { done: text === "" ? "The note is taken away." : "The note is kept." };
}
