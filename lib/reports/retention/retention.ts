import type { PeopleReach, RecordsReach } from "@/lib/access/reach";
import { byItself } from "@/lib/records/log-line";
import { keptFrom, type Retained, retained } from "@/lib/records/retention";
import { logOwnerUrl } from "@/lib/store/home/keep-log";
import type { Home } from "@/lib/store/home/open-home";
import { cutLines, oldLines } from "@/lib/store/log/cut-lines";
import {
  deleteOldNotes,
  deleteOldPrepared,
  oldNotes,
  oldPrepared,
} from "@/lib/store/retention/old-notes";
import { deleteOldRecords, oldRecords } from "@/lib/store/retention/old-records";
import { retentionPeriods } from "@/lib/store/retention/periods";
import { dropWaiting, waitingFiles } from "@/lib/store/waiting";
import { noteWork } from "../log/work";

type Reach = { readonly people: PeopleReach; readonly records: RecordsReach };

/** How long something is kept, and what is older now, or went. */
export type Kept = {
  readonly what: Retained;
  /** Null is for good. */
  readonly months: number | null;
  readonly from: string | null;
  readonly older: number;
};

/** What is kept how long, and how much of it is older. */
export async function retentionShown(reach: Reach, today: string): Promise<Kept[]> {
  return each(reach, today, async (what, from) => {
    if (what === "records")
      return (await oldRecords(reach.people, from)) + (await oldWaiting(reach, from)).length;
    if (what === "notes") return oldNotes(reach.people, from);
    if (what === "log") return oldLines(reach.people, from);
    return oldPrepared(reach.people, from);
  });
}

/** Deletes what is older than it is kept; `older` is how much went. */
export async function retentionRun(
  reach: Reach,
  home: Pick<Home, "url" | "keeperUrl">,
  today: string,
): Promise<Kept[]> {
  return each(reach, today, async (what, from) => {
    const gone = await deletedOf(what, from, reach, home);
    // A cut of the log has a line of its own.
    if (gone > 0 && what !== "log") await noteWork("deleted", byItself, { what, from, rows: gone });
    return gone;
  });
}

async function deletedOf(
  what: Retained,
  from: string,
  reach: Reach,
  home: Pick<Home, "url" | "keeperUrl">,
): Promise<number> {
  if (what === "notes") return deleteOldNotes(reach.people, from);
  if (what === "log") return cutLines(reach.people, from, logOwnerUrl(home));
  if (what !== "records") return deleteOldPrepared(reach.people, from);
  const files = await oldWaiting(reach, from);
  for (const { id } of files) await dropWaiting(reach.records, id);
  return (await deleteOldRecords(reach.people, from)) + files.length;
}

async function oldWaiting({ records }: Reach, from: string) {
  return (await waitingFiles(records)).filter(({ at }) => at.toISOString() < from);
}

async function each(
  { people }: Reach,
  today: string,
  work: (what: Retained, from: string) => Promise<number>,
): Promise<Kept[]> {
  const periods = await retentionPeriods(people);
  const found: Kept[] = [];
  for (const what of retained) {
    const months = periods[what] ?? null;
    const from = months === null ? null : keptFrom(today, months);
    found.push({ what, months, from, older: from === null ? 0 : await work(what, from) });
  }
  return found;
}
