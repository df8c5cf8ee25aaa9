"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import type { Viewer } from "@/lib/access/viewer";
import { agree, tellOfAction } from "@/lib/reports/audits/action-acts";
import { type Begun, beginNewAudit, reAudit } from "@/lib/reports/audits/begin";
import { answerToDispute, endCloserLook } from "@/lib/reports/audits/look-acts";
import { endSchedule, schedule } from "@/lib/reports/audits/schedules";
import {
  chooseCriteria,
  closeWindow,
  leaveAsSigned,
  openWindow,
  putAside,
  restate,
  sign,
} from "@/lib/reports/audits/scope-acts";
import { currentViewer } from "@/lib/reports/viewer";
import type { ActName } from "@/lib/views/log/logged-acts";
import type { Answer } from "../_parts/answer";
import { answered, typed } from "../_parts/answered";

type Given = Readonly<Record<string, string>>;

/** Begins an audit and leads to it. */
export async function beginAuditAct(_: Answer, form: FormData): Promise<Answer> {
  return begun("beginAuditAct", form, beginNewAudit);
}

/** Re-audits with the same scope and leads there. */
export async function reAuditAct(_: Answer, form: FormData): Promise<Answer> {
  return begun("reAuditAct", form, reAudit);
}

export async function chooseCriteriaAct(_: Answer, form: FormData): Promise<Answer> {
  return within("chooseCriteriaAct", form, chooseCriteria);
}

export async function openWindowAct(_: Answer, form: FormData): Promise<Answer> {
  return within("openWindowAct", form, openWindow);
}

export async function closeWindowAct(_: Answer, form: FormData): Promise<Answer> {
  return within("closeWindowAct", form, closeWindow);
}

export async function answerDisputeAct(_: Answer, form: FormData): Promise<Answer> {
  return within("answerDisputeAct", form, answerToDispute);
}

export async function endLookAct(_: Answer, form: FormData): Promise<Answer> {
  return within("endLookAct", form, endCloserLook);
}

export async function agreeActionAct(_: Answer, form: FormData): Promise<Answer> {
  return within("agreeActionAct", form, agree);
}

/** What became of an action: its owner's or a lead's to tell. */
export async function tellActionAct(_: Answer, form: FormData): Promise<Answer> {
  return within("tellActionAct", form, tellOfAction);
}

export async function signAct(_: Answer, form: FormData): Promise<Answer> {
  return within("signAct", form, sign);
}

export async function restateAct(_: Answer, form: FormData): Promise<Answer> {
  return within("restateAct", form, restate);
}

export async function leaveAsSignedAct(_: Answer, form: FormData): Promise<Answer> {
  return within("leaveAsSignedAct", form, leaveAsSigned);
}

export async function putAsideAct(_: Answer, form: FormData): Promise<Answer> {
  return within("putAsideAct", form, putAside);
}

/** Arranges that an audit is begun by itself when a quarter ends. */
export async function scheduleAuditAct(_: Answer, form: FormData): Promise<Answer> {
  return within("scheduleAuditAct", form, (viewer, given) => schedule(viewer, given, "audit"));
}

export async function endAuditScheduleAct(_: Answer, form: FormData): Promise<Answer> {
  return within("endAuditScheduleAct", form, (viewer, given) =>
    endSchedule(viewer, given, "audit"),
  );
}

function within(
  act: ActName,
  form: FormData,
  work: (viewer: Viewer, given: Given) => Promise<Answer>,
): Promise<Answer> {
  return answered(act, form, async () => {
    const answer = await work(await currentViewer(), typed(form));
    // What is agreed and asked stands on the pages of those concerned too.
    if (answer.done) revalidatePath("/", "layout");
    return answer;
  });
}

function begun(
  act: ActName,
  form: FormData,
  work: (viewer: Viewer, given: Given) => Promise<Begun>,
): Promise<Answer> {
  return answered(act, form, async () => {
    const answer = await work(await currentViewer(), typed(form));
    if ("wrong" in answer) return answer;
    revalidatePath("/audits");
    redirect(`/audits/${answer.audit}/scope`);
  });
}
