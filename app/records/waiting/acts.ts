"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import { currentViewer } from "@/lib/reports/viewer";
import {
  bringWaitingIn,
  dropWaitingFile,
  keepWaitingMapping,
  lookAnew,
  readByKept,
} from "@/lib/reports/waiting-change";
import type { ActName } from "@/lib/views/log/logged-acts";
import type { Answer } from "../../_parts/answer";
import { answered, typed } from "../../_parts/answered";

const named = z.object({ file: z.coerce.number().int().positive() });

export async function bringWaitingAct(_: Answer, form: FormData): Promise<Answer> {
  let importId: number | undefined;
  const answer = await answered("bringWaitingAct", form, async () => {
    const reach = recordsReach(await currentViewer());
    const ids = form.getAll("file").map((file) => named.parse({ file }).file);
    const brought = await bringWaitingIn(reach, ids);
    if ("wrong" in brought) return brought;
    importId = brought.importId;
    return {};
  });
  if (importId !== undefined) redirect(`/records/imports/${importId}`);
  return answer;
}

export async function keepWaitingMappingAct(_: Answer, form: FormData): Promise<Answer> {
  return withFile("keepWaitingMappingAct", form, keepWaitingMapping);
}

export async function dropWaitingAct(_: Answer, form: FormData): Promise<Answer> {
  return withFile("dropWaitingAct", form, dropWaitingFile);
}

/** Reads the file by a kept mapping. */
export async function readByKeptAct(_: Answer, form: FormData): Promise<Answer> {
  return withFile("readByKeptAct", form, (reach, id) =>
    readByKept(reach, id, String(form.get("name") ?? "")),
  );
}

/** Looks through the file anew, under what was settled by hand. */
export async function lookAnewAct(_: Answer, form: FormData): Promise<Answer> {
  return withFile("lookAnewAct", form, (reach, id) => lookAnew(reach, id, typed(form)));
}

function withFile(
  act: ActName,
  form: FormData,
  work: (reach: RecordsReach, id: number) => Promise<Answer>,
): Promise<Answer> {
  return answered(act, form, async () => {
    const reach = recordsReach(await currentViewer());
    const answer = await work(reach, named.parse(Object.fromEntries(form)).file);
    if (answer.done) revalidatePath("/records", "layout");
    return answer;
  });
}
