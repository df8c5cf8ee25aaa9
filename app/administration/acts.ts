"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { type PeopleReach, peopleReach } from "@/lib/access/reach";
import {
  type Changed,
  giveRole,
  personLeaves,
  removePerson,
  resetPassword,
  takeRole,
  takeSecondFactor,
} from "@/lib/reports/change-person";
import { addPerson } from "@/lib/reports/people";
import { changeSecondFactorRule } from "@/lib/reports/second-factor-rule";
import { currentViewer } from "@/lib/reports/viewer";
import type { ActName } from "@/lib/views/log/logged-acts";
import type { Answer } from "../_parts/answer";
import { answered, typed } from "../_parts/answered";

const person = z.object({ person: z.string().min(1) });
const leaving = person.extend({ sure: z.literal("yes") });
const role = person.extend({ grant: z.coerce.number().int() });

export async function addPersonAct(_: Answer, form: FormData): Promise<Answer> {
  return within("addPersonAct", form, async (reach) => {
    const answer = await addPerson(reach, { ...typed(form), password: form.get("password") });
    if ("wrong" in answer) return answer;
    const { name, email, password } = answer.added;
    return { done: `${name} can sign in as ${email}.`, secret: password ?? undefined };
  });
}

export async function giveRoleAct(_: Answer, form: FormData): Promise<Answer> {
  const fields = typed(form);
  return within("giveRoleAct", form, (reach) =>
    giveRole(reach, person.parse(fields).person, fields),
  );
}

export async function takeRoleAct(_: Answer, form: FormData): Promise<Answer> {
  return within("takeRoleAct", form, (reach): Promise<Changed> => {
    const { person: userId, grant } = role.parse(typed(form));
    return takeRole(reach, userId, grant);
  });
}

export async function resetPasswordAct(_: Answer, form: FormData): Promise<Answer> {
  return within("resetPasswordAct", form, async (reach) => {
    const { person: userId } = person.parse(typed(form));
    const answer = await resetPassword(reach, userId);
    if ("wrong" in answer) return answer;
    return { done: "Every session of this person has ended.", secret: answer.password };
  });
}

export async function takeSecondFactorAct(_: Answer, form: FormData): Promise<Answer> {
  return within("takeSecondFactorAct", form, (reach) =>
    takeSecondFactor(reach, person.parse(typed(form)).person),
  );
}

export async function changeSecondFactorRuleAct(_: Answer, form: FormData): Promise<Answer> {
  return within("changeSecondFactorRuleAct", form, (reach) =>
    changeSecondFactorRule(reach, typed(form)),
  );
}

export async function removePersonAct(_: Answer, form: FormData): Promise<Answer> {
  const answer = await within("removePersonAct", form, (reach) =>
    removePerson(reach, person.parse(typed(form)).person),
  );
  // The person's own page is gone.
  if (answer.done) redirect("/administration");
  return answer;
}

export async function leavePersonAct(_: Answer, form: FormData): Promise<Answer> {
  const answer = await within("leavePersonAct", form, async (reach) => {
    const read = leaving.safeParse(typed(form));
    if (!read.success) return { wrong: { form: "Tick that the account and the name are to go." } };
    return personLeaves(reach, read.data.person);
  });
  if (answer.done) redirect("/administration");
  return answer;
}

function within(
  act: ActName,
  form: FormData,
  work: (reach: PeopleReach) => Promise<Answer>,
): Promise<Answer> {
  return answered(act, form, async () => {
    const answer = await work(peopleReach(await currentViewer()));
    if (answer.done) revalidatePath("/administration", "layout");
    return answer;
  });
}
