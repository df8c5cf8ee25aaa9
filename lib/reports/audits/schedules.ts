import { z } from "zod";
import { type FiguresReach, leadReach, qualityReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import {
  addSchedule,
  preparedFile,
  preparedWithin,
  type ScheduleKind,
  schedulesWithin,
  stopSchedule,
} from "@/lib/store/audits/schedules";
import { practicesWithin } from "@/lib/store/records/practices";
import { type SchedulesView, schedulesView } from "@/lib/views/audits/schedules-view";
import { exportFormat } from "@/lib/views/export-format";
import type { Answer, Typed } from "./answer";
import { prepareDue } from "./prepare-due";

/** The schedules of a kind, what they prepared, and what can be chosen. What is due is prepared on the way. @throws Refused */
export async function schedulesOf(viewer: Viewer, what: ScheduleKind): Promise<SchedulesView> {
  const reach = reachFor(viewer, what);
  await prepareDue(reach, what, new Date().toISOString().slice(0, 10));
  const [schedules, prepared, practices] = await Promise.all([
    schedulesWithin(reach, what),
    preparedWithin(reach, what),
    practicesWithin(reach),
  ]);
  return schedulesView(what, schedules, prepared, practices, reach.practices === null);
}

const chosen = z.object({
  practice: z
    .string()
    .max(80)
    .regex(/^[^\0]*$/),
  format: z.string().max(10).optional(),
});

/** Adds a schedule. @throws Refused */
export async function schedule(viewer: Viewer, typed: Typed, what: ScheduleKind): Promise<Answer> {
  const reach = reachFor(viewer, what);
  const { practice, format } = chosen.parse(typed);
  if (practice !== "" && !(await practicesWithin(reach)).some(({ code }) => code === practice))
    return { wrong: { practice: "Choose a practice from the list." } };
  const known = format ? exportFormat(format) : undefined;
  if (what === "report" && !known) return { wrong: { format: "Choose a format from the list." } };
  await addSchedule(reach, {
    ...{ what, practice: practice || null, format: known ?? null, userId: viewer.userId },
  });
  return { done: "From the end of this quarter on it is prepared by itself." };
}

const numbered = z.object({ schedule: z.coerce.number().int().positive() });

/** Ends a schedule. @throws Refused */
export async function endSchedule(
  viewer: Viewer,
  typed: Typed,
  what: ScheduleKind,
): Promise<Answer> {
  const { schedule: id } = numbered.parse(typed);
  return (await stopSchedule(reachFor(viewer, what), what, id))
    ? { done: "Ended. What it prepared stays." }
    : { wrong: { form: "There is no such schedule among those you may end." } };
}

/** A prepared report; null where there is none within the viewer's reach. @throws Refused */
export async function preparedReport(viewer: Viewer, id: string, period: string) {
  const reach = qualityReach(viewer);
  return /^\d{1,9}$/.test(id) && /^\d{4}-Q[1-4]$/.test(period)
    ? preparedFile(reach, Number(id), period)
    : null;
}

function reachFor(viewer: Viewer, what: ScheduleKind): FiguresReach {
  return what === "audit" ? leadReach(viewer) : qualityReach(viewer);
}
