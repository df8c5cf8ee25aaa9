"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import { mendAlike } from "@/lib/reports/mend-alike";
import { mendOne } from "@/lib/reports/mend-one";
import { takeMendBack } from "@/lib/reports/mends";
import { currentViewer } from "@/lib/reports/viewer";
import type { ActName } from "@/lib/views/log/logged-acts";
import type { Answer } from "../../_parts/answer";
import { answered } from "../../_parts/answered";

const act = z.object({
  mend: z.coerce
    .number()
    .int()
    .positive()
    .max(2 ** 31 - 1),
});
const row = z.object({ id: z.string().max(20) });

export async function mendAlikeAct(_: Answer, form: FormData): Promise<Answer> {
  const answer = await within("mendAlikeAct", form, async (reach) =>
    mendAlike(reach, { ...texts(form), row: form.getAll("row").map(String) }, texts(form).join),
  );
  if ("mendId" in answer) redirect(`/records/held/mends#act-${answer.mendId}`);
  return answer;
}

export async function mendOneAct(_: Answer, form: FormData): Promise<Answer> {
  const typed = texts(form);
  // What was typed comes back with what is wrong; a patient's reference does not.
  form.delete("cell-patient");
  return within("mendOneAct", form, async (reach) => mendOne(reach, row.parse(typed).id, typed));
}

export async function takeMendBackAct(_: Answer, form: FormData): Promise<Answer> {
  return within("takeMendBackAct", form, async (reach) =>
    takeMendBack(reach, act.parse(texts(form)).mend),
  );
}

function texts(form: FormData): Record<string, string> {
  return Object.fromEntries(
    [...form].filter((field): field is [string, string] => typeof field[1] === "string"),
  );
}

function within<Done extends Answer>(
  act: ActName,
  form: FormData,
  work: (reach: RecordsReach) => Promise<Done>,
): Promise<Answer> {
  return answered(act, form, async () => {
    const answer = await work(recordsReach(await currentViewer()));
    if (answer.done) revalidatePath("/records", "layout");
    return answer;
  });
}
