import { z } from "zod";
import { type RecordsReach, recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { correctionsMade } from "@/lib/store/corrections/corrections-made";
import { differencesNow } from "@/lib/store/corrections/differences";
import { newerVersions, type PracticeRule } from "@/lib/store/corrections/newer-versions-rule";
import {
  type CorrectionLine,
  correctionLine,
  type DifferenceLine,
  differenceLine,
} from "@/lib/views/correction-lines";
import { listWords } from "@/lib/views/list-words";
import { count } from "@/lib/views/quantity";
import type { Address } from "./asked-period";

export type CorrectionsView = {
  readonly differences: readonly DifferenceLine[];
  readonly differencesFound: string;
  readonly onlyRow: boolean;
  readonly made: readonly CorrectionLine[];
  readonly madeFound: string;
  readonly rules: readonly PracticeRule[];
  readonly practice: string;
  readonly state: "" | "standing" | "taken back";
  /** Addresses of the neighbouring pages; null where there is none. */
  readonly moreDifferences: string | null;
  readonly fewerDifferences: string | null;
  readonly moreMade: string | null;
  readonly fewerMade: string | null;
};

/** Rows on one page. */
const shown = 50;

const page = z.coerce.number().int().positive().max(1_000_000).default(1).catch(1);
const asked = z.object({
  practice: z.string().max(80).default("").catch(""),
  state: z.enum(["", "standing", "taken back"]).default("").catch(""),
  row: z
    .string()
    .regex(/^\d{1,18}$/)
    .optional()
    .catch(undefined),
  page,
  made: page,
});

/** The newer versions that wait for an answer, and the corrections made. @throws Refused */
export async function correctionsPage(viewer: Viewer, address: Address): Promise<CorrectionsView> {
  const reach = recordsReach(viewer);
  const read = asked.parse(address);
  const practice = read.practice || undefined;
  const [differences, made, rules] = await Promise.all([
    differencesNow(reach, {
      practice,
      row: read.row,
      limit: shown,
      offset: (read.page - 1) * shown,
    }),
    correctionsMade(reach, {
      practice,
      state: read.state || undefined,
      limit: shown,
      offset: (read.made - 1) * shown,
    }),
    newerVersions(reach),
  ]);
  const to = (change: { page?: number; made?: number }, all: number) => {
    const other = change.page ?? change.made ?? 1;
    if (other < 1 || (other - 1) * shown >= all) return null;
    const parameters = {
      practice: read.practice,
      state: read.state,
      page: read.page,
      made: read.made,
      ...change,
    };
    return `/records/corrections?${new URLSearchParams(Object.entries(parameters).map(([name, value]) => [name, String(value)]))}`;
  };
  return {
    differences: differences.rows.map(differenceLine),
    differencesFound:
      differences.count === 0
        ? ""
        : `${count(differences.count)} to look at, in the order of reading.`,
    onlyRow: read.row !== undefined,
    made: made.rows.map(correctionLine),
    madeFound: listWords(read.made, shown, made.count, "No correction was made."),
    rules,
    practice: read.practice,
    state: read.state,
    moreDifferences: to({ page: read.page + 1 }, differences.count),
    fewerDifferences: to({ page: read.page - 1 }, differences.count),
    moreMade: to({ made: read.made + 1 }, made.count),
    fewerMade: to({ made: read.made - 1 }, made.count),
  };
}

/** How many newer versions wait for an answer. */
export async function differencesWaiting(reach: RecordsReach): Promise<number> {
  return (await differencesNow(reach, { limit: 0, offset: 0 })).count;
}
