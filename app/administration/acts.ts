"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { type PeopleReach, peopleReach } from "@/lib/access/reach";
import {
  type Changed,
  giveRole,
  removePerson,
  resetPassword,
  takeRole,
  takeSecondFactor,
} from "@/lib/reports/change-person";
import { addPerson } from "@/lib/reports/people";
import { changeSecondFactorRule } from "@/lib/reports/second-factor-rule";
import { currentViewer } from "@/lib/reports/viewer";
import type { Answer } from "../_parts/answer";
import { answered, typed } from "../_parts/answered";

const person = z.object({ person: z.string().min(1) });
const role = person.extend({ grant: z.coerce.number().int() });

export async function addPersonAct(_: Answer, form: FormData): Promise<Answer> {
  return within(form, async (reach) => {
    const answer = await addPerson(reach, { ...typed(form), password: form.get("password") });
    if ("wrong" in answer) return answer;
    const { name, email, password } = answer.added;
    return { done: `${name} can sign in as ${email}.`, secret: password ?? undefined };
  });
}

export async function giveRoleAct(_: Answer, form: FormData): Promise<Answer> {
  const fields = typed(form);
  return within(form, (reach) => giveRole(reach, person.parse(fields).person, fields));
}

export async function takeRoleAct(_: Answer, form: FormData): Promise<Answer> {
  return within(form, (reach): Promise<Changed> => {
    const { person: userId, grant } = role.parse(typed(form));
    return takeRole(reach, userId, grant);
  });
}

export async function resetPasswordAct(_: Answer, form: FormData): Promise<Answer> {
  return within(form, async (reach) => {
    const { person: userId } = person.parse(typed(form));
    const answer = await resetPassword(reach, userId);
    if ("wrong" in answer) return answer;
    return { done: "Every session of this person has ended.", secret: answer.password };
  });
}

export async function takeSecondFactorAct(_: Answer, form: FormData): Promise<Answer> {
  return within(form, (reach) => takeSecondFactor(reach, person.parse(typed(form)).person));
}

export async function changeSecondFactorRuleAct(_: Answer, form: FormData): Promise<Answer> {
  return within(form, (reach) => changeSecondFactorRule(reach, typed(form)));
}

export async function removePersonAct(_: Answer, form: FormData): Promise<Answer> {
  const answer = await within(form, (reach) =>
    removePerson(reach, person.parse(typed(form)).person),
  );
  // The person's own page is gone.
  if (answer.done) redirect("/administration");
  return answer;
}

function within(form: FormData, work: (reach: PeopleReach) => Promise<Answer>): Promise<Answer> {
  return answered(form, async () => {
    const answer = await work(peopleReach(await currentViewer()));
    if (answer.done) revalidatePath("/administration", "layout");
    return answer;
  });
}
