"use server";

import { revalidatePath } from "next/cache";
import { keepNote } from "@/lib/reports/own-note";
import { currentViewer } from "@/lib/reports/viewer";
import type { Answer } from "../_parts/answer";
import { answered, typed } from "../_parts/answered";

/** Keeps the viewer's own note on a quarter. */
export async function keepNoteAct(_: Answer, form: FormData): Promise<Answer> {
  return answered("keepNoteAct", form, async () => {
    const answer = await keepNote(await currentViewer(), typed(form));
    if ("done" in answer) revalidatePath("/clinician");
    return answer;
  });
}
