"use server";

import { revalidatePath } from "next/cache";
import type { Viewer } from "@/lib/access/viewer";
import {
  answerAudit,
  confirmOwn,
  disputeOwn,
  reflect,
  withdrawOwn,
} from "@/lib/reports/audits/shared-acts";
import { currentViewer } from "@/lib/reports/viewer";
import type { ActName } from "@/lib/views/log/logged-acts";
import type { Answer } from "../../_parts/answer";
import { answered, typed } from "../../_parts/answered";

/** Confirms one's own records in an audit, or takes that back. */
export async function confirmOwnAct(_: Answer, form: FormData): Promise<Answer> {
  return within("confirmOwnAct", form, confirmOwn);
}

export async function disputeOwnAct(_: Answer, form: FormData): Promise<Answer> {
  return within("disputeOwnAct", form, disputeOwn);
}

export async function withdrawOwnAct(_: Answer, form: FormData): Promise<Answer> {
  return within("withdrawOwnAct", form, withdrawOwn);
}

export async function answerAuditAct(_: Answer, form: FormData): Promise<Answer> {
  return within("answerAuditAct", form, answerAudit);
}

export async function reflectAct(_: Answer, form: FormData): Promise<Answer> {
  return within("reflectAct", form, reflect);
}

function within(
  act: ActName,
  form: FormData,
  work: (viewer: Viewer, given: Readonly<Record<string, string>>) => Promise<Answer>,
): Promise<Answer> {
  return answered(act, form, async () => {
    const answer = await work(await currentViewer(), typed(form));
    if (answer.done) revalidatePath("/clinician/audits", "layout");
    return answer;
  });
}
