"use server";

import { revalidatePath } from "next/cache";
import { endSchedule, schedule } from "@/lib/reports/audits/schedules";
import { currentViewer } from "@/lib/reports/viewer";
import type { Answer } from "../_parts/answer";
import { answered, typed } from "../_parts/answered";

/** Arranges that the adherence report is made by itself when a quarter ends. */
export async function scheduleReportAct(_: Answer, form: FormData): Promise<Answer> {
  return answered("scheduleReportAct", form, async () => {
    const answer = await schedule(await currentViewer(), typed(form), "report");
    if (answer.done) revalidatePath("/quality/prepared");
    return answer;
  });
}

export async function endReportScheduleAct(_: Answer, form: FormData): Promise<Answer> {
  return answered("endReportScheduleAct", form, async () => {
    const answer = await endSchedule(await currentViewer(), typed(form), "report");
    if (answer.done) revalidatePath("/quality/prepared");
    return answer;
  });
}
