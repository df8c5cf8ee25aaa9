"use server";

import { revalidatePath } from "next/cache";
import { headers } from "next/headers";
import { redirect } from "next/navigation";
import { z } from "zod";
import { notesReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { changeOwnPassword } from "@/lib/reports/account/own-password";
import {
  beginSecondFactor,
  confirmSecondFactor,
  type Enrolment,
  endSecondFactor,
  renewRecoveryCodes,
} from "@/lib/reports/account/own-second-factor";
import { endOwnSessions } from "@/lib/reports/account/own-sessions";
import { ownViewer } from "@/lib/reports/viewer";
import type { ActName } from "@/lib/views/log/logged-acts";
import type { Answer } from "../_parts/answer";
import { answered } from "../_parts/answered";
import { setCookies } from "../_parts/set-cookies";

/** An answer that tells something once. */
export type Told = Answer & { readonly enrolment?: Enrolment; readonly codes?: readonly string[] };

const secret = z.string().max(1000);

export async function changePasswordAct(_: Answer, form: FormData): Promise<Answer> {
  const viewer = await ownViewer();
  return withoutTyped("changePasswordAct", form, async () => {
    const { current, next } = z.object({ current: secret, next: secret }).parse(fields(form));
    const answer = await changeOwnPassword(viewer, { current, next }, await headers());
    if ("wrong" in answer) return answer;
    await setCookies(answer.cookies);
    goOn(viewer);
    return { done: answer.done };
  });
}

export async function endSessionAct(_: Answer, form: FormData): Promise<Answer> {
  const viewer = await ownViewer();
  return withoutTyped("endSessionAct", form, async () => {
    const { session } = z.object({ session: z.string().min(1) }).parse(fields(form));
    await endOwnSessions(notesReach(viewer), session);
    revalidatePath("/account");
    return { done: "The session has ended." };
  });
}

export async function endEverySessionAct(_: Answer, form: FormData): Promise<Answer> {
  return answered("endEverySessionAct", form, async () => {
    await endOwnSessions(notesReach(await ownViewer()));
    redirect("/sign-in");
  });
}

export async function beginSecondFactorAct(_: Told, form: FormData): Promise<Told> {
  const viewer = await ownViewer();
  return withoutTyped<Told>("beginSecondFactorAct", form, async () => {
    const { current } = z.object({ current: secret }).parse(fields(form));
    return beginSecondFactor(viewer, current, await headers());
  });
}

export async function confirmSecondFactorAct(_: Answer, form: FormData): Promise<Answer> {
  const viewer = await ownViewer();
  return withoutTyped("confirmSecondFactorAct", form, async () => {
    const { code } = z.object({ code: secret }).parse(fields(form));
    const answer = await confirmSecondFactor(code, await headers());
    if ("wrong" in answer) return answer;
    await setCookies(answer.cookies);
    goOn(viewer);
    return { done: "The second factor is on: every sign-in asks for a code from now on." };
  });
}

export async function endSecondFactorAct(_: Answer, form: FormData): Promise<Answer> {
  const viewer = await ownViewer();
  return withoutTyped("endSecondFactorAct", form, async () => {
    const { current } = z.object({ current: secret }).parse(fields(form));
    const answer = await endSecondFactor(viewer, current, await headers());
    if ("wrong" in answer) return answer;
    await setCookies(answer.cookies);
    revalidatePath("/", "layout");
    return { done: "The second factor is off." };
  });
}

export async function renewRecoveryCodesAct(_: Told, form: FormData): Promise<Told> {
  const viewer = await ownViewer();
  return withoutTyped<Told>("renewRecoveryCodesAct", form, async () => {
    const { current } = z.object({ current: secret }).parse(fields(form));
    return renewRecoveryCodes(viewer, current, await headers());
  });
}

/** Whoever had to do this first is led to what is now open to them. */
function goOn(viewer: Viewer): void {
  revalidatePath("/", "layout");
  if (viewer.due) redirect("/");
}

/** What was typed here is secret and does not come back. */
async function withoutTyped<One extends Answer>(
  act: ActName,
  _form: FormData,
  work: () => Promise<One>,
): Promise<One> {
  // Nor is any of it for the log.
  const answer = await answered(act, new FormData(), work);
  return { ...answer, given: undefined } as One;
}

function fields(form: FormData): Record<string, FormDataEntryValue> {
  return Object.fromEntries(form);
}
