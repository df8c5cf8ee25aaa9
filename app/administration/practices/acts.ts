"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { type PeopleReach, peopleReach } from "@/lib/access/reach";
import { changePractice, confirmCodes } from "@/lib/reports/places";
import { currentViewer } from "@/lib/reports/viewer";
import type { ActName } from "@/lib/views/log/logged-acts";
import type { Answer } from "../../_parts/answer";
import { answered, typed } from "../../_parts/answered";

const practice = z.object({ practice: z.string().min(1) });
const codes = practice.extend({ kind: z.enum(["chair", "clinician"]) });

export async function changePracticeAct(_: Answer, form: FormData): Promise<Answer> {
  const fields = typed(form);
  return within("changePracticeAct", form, (reach) =>
    changePractice(reach, practice.parse(fields).practice, fields),
  );
}

export async function confirmCodesAct(_: Answer, form: FormData): Promise<Answer> {
  const { practice: code, kind } = codes.parse(typed(form));
  const chosen = form.getAll("code").map(String);
  return within("confirmCodesAct", form, (reach) => confirmCodes(reach, code, kind, chosen));
}

function within(
  act: ActName,
  form: FormData,
  work: (reach: PeopleReach) => Promise<Answer>,
): Promise<Answer> {
  return answered(act, form, async () => {
    const answer = await work(peopleReach(await currentViewer()));
    if (answer.done) revalidatePath("/administration/practices");
    return answer;
  });
}
