import { type FiguresReach, narrowed } from "@/lib/access/reach";
import { byItself } from "@/lib/records/log-line";
import { type Period, quarterOf, shifted } from "@/lib/records/period";
import {
  claimQuarter,
  keepPrepared,
  type Schedule,
  type ScheduleKind,
  schedulesWithin,
} from "@/lib/store/audits/schedules";
import { exportFormat } from "@/lib/views/export-format";
import { exportAdherence } from "../adherence-export";
import { noteWork } from "../log/work";
import { beginFor } from "./begin";

/** One thing that was prepared, in words. */
export type PreparedNow = { readonly schedule: number; readonly words: string };

/**
 * Prepares what schedules ask for of the quarter that ended last, once each, whoever asks and however many at the same time. A quarter that
 * was over before a schedule was made is not prepared by it.
 *
 * @param today YYYY-MM-DD
 */
export async function prepareDue(
  reach: FiguresReach,
  what: ScheduleKind,
  today: string,
): Promise<PreparedNow[]> {
  const ended = shifted(quarterOf(today), -1);
  const made: PreparedNow[] = [];
  for (const schedule of await schedulesWithin(reach, what)) {
    if (schedule.at.slice(0, 10) >= ended.until) continue;
    if (!(await claimQuarter(reach, schedule.id, ended.name))) continue;
    const { words, about } = await prepared(reach, schedule, ended).catch(async (trouble) => {
      // The next who asks tries again.
      await keepPrepared(reach, schedule.id, ended.name, null);
      throw trouble;
    });
    made.push({ schedule: schedule.id, words });
    const { id, practice } = schedule;
    await noteWork("prepared", byItself, { schedule: id, practice, period: ended.name, ...about });
  }
  return made;
}

async function prepared(
  reach: FiguresReach,
  schedule: Schedule,
  of: Period,
): Promise<{ readonly words: string; readonly about: Parameters<typeof noteWork>[2] }> {
  const { id, practice, what } = schedule;
  const where = practice ? `practice ${practice}` : "the whole group";
  if (what === "audit") {
    const audit = await beginFor(reach, practice, of, `schedule of ${schedule.by}`);
    await keepPrepared(reach, id, of.name, { audit });
    return {
      about: { audit },
      words: `An audit of ${where}, ${of.name}, is begun: number ${audit}.`,
    };
  }
  const format = exportFormat(schedule.format ?? "") ?? "pdf";
  const { name, bytes, sha256 } = await exportAdherence(
    narrowed(reach, practice ?? undefined),
    of,
    format,
  );
  await keepPrepared(reach, id, of.name, { file: { name, bytes, sha256 } });
  return {
    about: { format },
    words: `The adherence report of ${where}, ${of.name}, is made: ${name}.`,
  };
}
