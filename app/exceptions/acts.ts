"use server";

import { revalidatePath } from "next/cache";
import type { Viewer } from "@/lib/access/viewer";
import {
  answerAboutException,
  askAboutException,
  closeExceptionQuery,
  enterOwnException,
  withdrawOwnException,
} from "@/lib/reports/exception-acts";
import { currentViewer } from "@/lib/reports/viewer";
import type { ActName } from "@/lib/views/log/logged-acts";
import type { Answer } from "../_parts/answer";
import { answered, typed } from "../_parts/answered";

/** Enters an exception for the viewer's own work. */
export async function enterExceptionAct(_: Answer, form: FormData): Promise<Answer> {
  return within("enterExceptionAct", form, enterOwnException);
}

export async function withdrawExceptionAct(_: Answer, form: FormData): Promise<Answer> {
  return within("withdrawExceptionAct", form, withdrawOwnException);
}

/** A lead's question about an exception. */
export async function askAct(_: Answer, form: FormData): Promise<Answer> {
  return within("askAct", form, askAboutException);
}

export async function answerAct(_: Answer, form: FormData): Promise<Answer> {
  return within("answerAct", form, answerAboutException);
}

export async function closeAct(_: Answer, form: FormData): Promise<Answer> {
  return within("closeAct", form, closeExceptionQuery);
}

function within(
  act: ActName,
  form: FormData,
  work: (viewer: Viewer, given: Readonly<Record<string, string>>) => Promise<Answer>,
): Promise<Answer> {
  return answered(act, form, async () => {
    const answer = await work(await currentViewer(), typed(form));
    // Figures everywhere rest on what is excepted.
    if (answer.done) revalidatePath("/", "layout");
    return answer;
  });
}
