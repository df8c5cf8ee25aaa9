import type { RecordsReach } from "@/lib/access/reach";
import { saveDraft } from "@/lib/store/waiting";
import type { PreviewView } from "@/lib/views/mapping/preview-view";
import type { TestView } from "@/lib/views/mapping/test-view";
import { readDraft } from "./mapping-draft";
import { previewMapping } from "./mapping-preview";
import { beginTest, testOf } from "./mapping-test";
import { waitingNumbered } from "./waiting-file-page";

/** A draft as a page sends it could not be taken: why, in a sentence. */
export type NotTaken = { readonly sentence: string };

/** Keeps the draft of a file that waits and says what its first rows become. Null where there is no such file. */
export async function keepDraft(
  reach: RecordsReach,
  id: number,
  sent: unknown,
): Promise<PreviewView | NotTaken | null> {
  const file = await waitingNumbered(reach, id);
  if (!file) return null;
  const read = readDraft(sent);
  if ("wrong" in read) return { sentence: `This mapping cannot be used as it is: ${read.wrong}` };
  await saveDraft(reach, id, read.draft);
  return previewMapping(reach, file, read.draft);
}

/** Begins the test of a draft on the whole file. Null where there is no such file. */
export async function testDraft(
  reach: RecordsReach,
  id: number,
  sent: unknown,
): Promise<TestView | NotTaken | null> {
  const file = await waitingNumbered(reach, id);
  if (!file) return null;
  const read = readDraft(sent);
  if ("wrong" in read) return { sentence: `This mapping cannot be used as it is: ${read.wrong}` };
  await saveDraft(reach, id, read.draft);
  return beginTest(reach, file, read.draft);
}

/** How far the test of the kept draft is. Null where there is no such file. */
export async function testSoFar(reach: RecordsReach, id: number): Promise<TestView | null> {
  const file = await waitingNumbered(reach, id);
  if (!file) return null;
  const read = readDraft(file.draft);
  return "draft" in read ? testOf(file, read.draft) : { state: "none" };
}
