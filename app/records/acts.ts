"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import { letRowsGo, takeRowsBack } from "@/lib/reports/held-rows";
import { endImport, goOnWithImport, takeImportBack } from "@/lib/reports/import-answer";
import { currentViewer } from "@/lib/reports/viewer";
import type { ActName } from "@/lib/views/log/logged-acts";
import type { Answer } from "../_parts/answer";
import { answered } from "../_parts/answered";

const undo = z.object({ import: z.coerce.number().int().positive(), sure: z.literal("yes") });

export async function undoAct(_: Answer, form: FormData): Promise<Answer> {
  return within("undoAct", form, async (reach) => {
    const read = undo.safeParse(Object.fromEntries(form));
    if (!read.success) return { wrong: { form: "Tick that you want to take it back." } };
    return takeImportBack(reach, read.data.import);
  });
}

const importNamed = z.object({ import: z.coerce.number().int().positive() });

export async function cancelAct(_: Answer, form: FormData): Promise<Answer> {
  return within("cancelAct", form, async (reach) =>
    endImport(reach, importNamed.parse(Object.fromEntries(form)).import),
  );
}

const goingOn = importNamed.extend({ how: z.enum(["go on", "let go"]) });

export async function goOnAct(_: Answer, form: FormData): Promise<Answer> {
  const read = goingOn.safeParse(Object.fromEntries(form));
  if (!read.success) return { wrong: { form: "Choose what is to become of the files." } };
  const answer = await within("goOnAct", form, (reach) =>
    goOnWithImport(reach, read.data.import, read.data.how),
  );
  if ("done" in answer && read.data.how === "go on")
    redirect(`/records/imports/${read.data.import}`);
  return answer;
}

export async function letGoAct(_: Answer, form: FormData): Promise<Answer> {
  return within("letGoAct", form, (reach) => letRowsGo(reach, chosen(form), form.get("reason")));
}

export async function takeBackAct(_: Answer, form: FormData): Promise<Answer> {
  return within("takeBackAct", form, (reach) => takeRowsBack(reach, chosen(form)));
}

function chosen(form: FormData): string[] {
  return form.getAll("row").map(String);
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
