"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { addOwnTerm, retireOwnTerm, rewordOwnTerm } from "@/lib/reports/protocol/change-terms";
import { endCriterion, withdrawCriterionVersion } from "@/lib/reports/protocol/end-version";
import { previewCriterion } from "@/lib/reports/protocol/preview";
import { putCriterionInForce } from "@/lib/reports/protocol/put-in-force";
import { currentViewer } from "@/lib/reports/viewer";
import { criterionAddress } from "@/lib/views/protocol/criterion-address";
import type { Answer } from "../_parts/answer";
import { answered, typed } from "../_parts/answered";
import type { Counted } from "./counted";

export async function putInForceAct(_: Answer, form: FormData): Promise<Answer> {
  return answered("putInForceAct", form, async () => {
    const fields = typed(form);
    const answer = await putCriterionInForce(await currentViewer(), fields);
    if ("wrong" in answer) return answer;
    revalidatePath("/protocol", "layout");
    redirect(criterionAddress(answer.id, fields.practice ?? ""));
  });
}

export async function previewAct(_: Counted, form: FormData): Promise<Counted> {
  let counted: Counted = {};
  const { wrong } = await answered("previewAct", form, async () => {
    counted = await previewCriterion(await currentViewer(), typed(form));
    return {};
  });
  return wrong ? { wrong } : counted;
}

export async function endCriterionAct(_: Answer, form: FormData): Promise<Answer> {
  return answered("endCriterionAct", form, async () =>
    renewed(await endCriterion(await currentViewer(), typed(form))),
  );
}

export async function withdrawVersionAct(_: Answer, form: FormData): Promise<Answer> {
  return answered("withdrawVersionAct", form, async () =>
    renewed(await withdrawCriterionVersion(await currentViewer(), typed(form))),
  );
}

export async function addTermAct(_: Answer, form: FormData): Promise<Answer> {
  return answered("addTermAct", form, async () =>
    renewed(await addOwnTerm(await currentViewer(), typed(form))),
  );
}

export async function rewordTermAct(_: Answer, form: FormData): Promise<Answer> {
  return answered("rewordTermAct", form, async () =>
    renewed(await rewordOwnTerm(await currentViewer(), typed(form))),
  );
}

export async function retireTermAct(_: Answer, form: FormData): Promise<Answer> {
  return answered("retireTermAct", form, async () =>
    renewed(await retireOwnTerm(await currentViewer(), typed(form))),
  );
}

function renewed(answer: Answer): Answer {
  if (answer.done) revalidatePath("/protocol", "layout");
  return answer;
}
