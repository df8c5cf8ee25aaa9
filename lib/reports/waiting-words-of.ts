import { recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { Recognised } from "@/lib/intake/recognise/recognised";
import type { ColumnWords } from "@/lib/views/mapping/column-words";
import { count } from "@/lib/views/quantity";
import { readDraft } from "./mapping-draft";
import { hiddenColumns } from "./mapping-hidden";
import { waitingNumbered } from "./waiting-file-page";

const mostListed = 200;

/**
 * The different words of a column of a file that waits, most frequent first; none of a column that names patients. Null where there is
 * no such file or column.
 *
 * @throws Refused
 */
export async function waitingWords(
  viewer: Viewer,
  id: number,
  column: string,
): Promise<ColumnWords | null> {
  const file = await waitingNumbered(recordsReach(viewer), id);
  if (!file?.recognised) return null;
  const { columns } = file.recognised as Recognised;
  const profile = columns.find(({ name }) => name === column);
  if (!profile) return null;
  const read = readDraft(file.draft);
  const names = columns.map(({ name }) => name);
  if (!("draft" in read) || hiddenColumns(read.draft, names).has(column))
    return { words: [], more: false, hidden: true };
  const words = profile.words.filter(({ text }) => text !== "");
  return {
    words: [
      ...(profile.empty > 0 ? [{ text: "", count: count(profile.empty) }] : []),
      ...words.slice(0, mostListed).map((one) => ({ text: one.text, count: count(one.count) })),
    ],
    more: profile.manyWords || words.length > mostListed,
    hidden: false,
  };
}
