"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import { setRule, settleDifferences, takeBack } from "@/lib/reports/corrections-acts";
import { currentViewer } from "@/lib/reports/viewer";
import type { ActName } from "@/lib/views/log/logged-acts";
import type { Answer } from "../../_parts/answer";
import { answered } from "../../_parts/answered";

const named = z.object({ correction: z.coerce.number().int().positive() });
const practice = z.object({ practice: z.string().min(1) });

export async function settleDifferencesAct(_: Answer, form: FormData): Promise<Answer> {
  return within("settleDifferencesAct", form, (reach) =>
    settleDifferences(reach, form.getAll("row").map(String), form.get("how")),
  );
}

export async function takeCorrectionBackAct(_: Answer, form: FormData): Promise<Answer> {
  return within("takeCorrectionBackAct", form, async (reach) =>
    takeBack(reach, named.parse(Object.fromEntries(form)).correction),
  );
}

export async function setRuleAct(_: Answer, form: FormData): Promise<Answer> {
  return within("setRuleAct", form, async (reach) =>
    setRule(reach, practice.parse(Object.fromEntries(form)).practice, form.get("rule")),
  );
}

function within(
  act: ActName,
  form: FormData,
  work: (reach: RecordsReach) => Promise<Answer>,
): Promise<Answer> {
  return answered(act, form, async () => {
    const answer = await work(recordsReach(await currentViewer()));
    if (answer.done) revalidatePath("/records", "layout");
    return answer;
  });
}
