"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { recordsReach } from "@/lib/access/reach";
import { keepChanged, keepMappingFile, setRetired } from "@/lib/reports/mappings-change";
import { currentViewer } from "@/lib/reports/viewer";
import type { Answer } from "../../_parts/answer";
import { answered } from "../../_parts/answered";

export async function bringMappingAct(_: Answer, form: FormData): Promise<Answer> {
  return answered("bringMappingAct", form, async () => {
    const reach = recordsReach(await currentViewer());
    const file = form.get("mapping");
    if (!(file instanceof File)) return { wrong: { form: "Choose the JSON file of a mapping." } };
    return renewed(await keepMappingFile(reach, file));
  });
}

const retiring = z.object({ name: z.string().max(80), retired: z.enum(["yes", "no"]) });

export async function retireMappingAct(_: Answer, form: FormData): Promise<Answer> {
  return answered("retireMappingAct", form, async () => {
    const reach = recordsReach(await currentViewer());
    const { name, retired } = retiring.parse(Object.fromEntries(form));
    return renewed(await setRetired(reach, name, retired === "yes"));
  });
}

export async function changeMappingAct(_: Answer, form: FormData): Promise<Answer> {
  let address: string | undefined;
  const answer = await answered("changeMappingAct", form, async () => {
    const reach = recordsReach(await currentViewer());
    const changed = await keepChanged(reach, String(form.get("mapping") ?? ""));
    if ("wrong" in changed) return changed;
    address = changed.address;
    return {};
  });
  if (address === undefined) return answer;
  revalidatePath("/records", "layout");
  redirect(address);
}

function renewed(answer: Answer): Answer {
  if (answer.done) revalidatePath("/records", "layout");
  return answer;
}
