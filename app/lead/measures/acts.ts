"use server";

import { revalidatePath } from "next/cache";
import { setRebase, takeRebaseBack } from "@/lib/reports/rebase";
import { currentViewer } from "@/lib/reports/viewer";
import type { Answer } from "../../_parts/answer";
import { answered, typed } from "../../_parts/answered";

export async function setRebaseAct(_: Answer, form: FormData): Promise<Answer> {
  return answered("setRebaseAct", form, async () => {
    const answer = await setRebase(await currentViewer(), typed(form));
    if (answer.done) revalidatePath("/lead/measures", "layout");
    return answer;
  });
}

export async function takeRebaseBackAct(_: Answer, form: FormData): Promise<Answer> {
  return answered("takeRebaseBackAct", form, async () => {
    const answer = await takeRebaseBack(await currentViewer(), typed(form));
    if (answer.done) revalidatePath("/lead/measures", "layout");
    return answer;
  });
}
