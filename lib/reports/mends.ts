import { z } from "zod";
import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { UndoRefused } from "@/lib/store/import/take-back";
import { mendsMade } from "@/lib/store/mend/mends";
import { undoMend } from "@/lib/store/mend/undo-mend";
import { practicesWithin } from "@/lib/store/records/practices";
import { listWords } from "@/lib/views/list-words";
import { type MendLine, mendLine } from "@/lib/views/mend-lines";
import type { Address } from "./asked-period";
import type { Settled } from "./held-rows";

export type MendsPage = {
  readonly mends: readonly MendLine[];
  readonly found: string;
  readonly previous: string | null;
  readonly next: string | null;
};

/** Acts on one page. */
const shown = 25;

const asked = z.object({
  page: z.coerce.number().int().positive().max(1_000_000).default(1).catch(1),
});

/** What was done on the bench, latest first. @throws Refused */
export async function mendsPage(viewer: Viewer, address: Address): Promise<MendsPage> {
  const reach = recordsReach(viewer);
  const { page } = asked.parse(address);
  const [{ rows, count }, practices] = await Promise.all([
    mendsMade(reach, { limit: shown, offset: (page - 1) * shown }),
    practicesWithin(reach),
  ]);
  const zone = practices[0]?.zone ?? "UTC";
  const to = (other: number) =>
    other < 1 || (other - 1) * shown >= count ? null : `/records/held/mends?page=${other}`;
  return {
    mends: rows.map((row) => mendLine(row, zone)),
    found: listWords(page, shown, count, "Nothing was mended yet."),
    previous: to(page - 1),
    next: to(page + 1),
  };
}

/** Takes an act on the bench back, or says in a sentence why not. @throws Refused */
export async function takeMendBack(reach: RecordsReach, id: number): Promise<Settled> {
  try {
    await undoMend(reach, id);
    return { done: "Taken back: its rows are held as before." };
  } catch (trouble) {
    if (trouble instanceof UndoRefused) return { wrong: { form: trouble.message } };
    throw trouble;
  }
}
