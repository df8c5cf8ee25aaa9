"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { recordsReach } from "@/lib/access/reach";
import { type Tried, tryMapping } from "@/lib/reports/try-mapping";
import { currentViewer } from "@/lib/reports/viewer";
import { bringWaitingIn, dropWaitingFile } from "@/lib/reports/waiting-files";
import type { Answer } from "../../_parts/answer";
import { answered } from "../../_parts/answered";

const named = z.object({ file: z.coerce.number().int().positive() });

export async function bringWaitingAct(_: Answer, form: FormData): Promise<Answer> {
  let importId: number | undefined;
  const answer = await answered(form, async () => {
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

export async function dropWaitingAct(_: Answer, form: FormData): Promise<Answer> {
  return answered(form, async () => {
    const reach = recordsReach(await currentViewer());
    const answer = await dropWaitingFile(reach, named.parse(Object.fromEntries(form)).file);
    revalidatePath("/records", "layout");
    return answer;
  });
}

/** What the mapping as it is now makes of the file; `whole` looks at every row. */
export async function tryMappingAct(
  _: { tried?: Tried },
  form: FormData,
): Promise<Answer & { tried?: Tried }> {
  let tried: Tried | undefined;
  const answer = await answered(form, async () => {
    const viewer = await currentViewer();
    const typed = { id: String(form.get("id") ?? ""), mapping: String(form.get("mapping") ?? "") };
    tried = await tryMapping(viewer, typed, form.get("whole") === "yes");
    return {};
  });
  return { ...answer, tried };
}
