"use server";

import { revalidatePath } from "next/cache";
import { changeFlagLevels } from "@/lib/reports/flag-levels";
import { currentViewer } from "@/lib/reports/viewer";
import type { Answer } from "../../_parts/answer";
import { answered, typed } from "../../_parts/answered";

export async function changeFlagLevelsAct(_: Answer, form: FormData): Promise<Answer> {
  return answered("changeFlagLevelsAct", form, async () => {
    const answer = await changeFlagLevels(await currentViewer(), typed(form));
    if (answer.done) revalidatePath("/administration/levels");
    return answer;
  });
}
