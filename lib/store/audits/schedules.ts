import type { FiguresReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { pool } from "../database";
import { isoSql } from "./audits";

/** What is prepared by itself when a quarter ends: audits are a lead's, reports a quality officer's. */
export type ScheduleKind = "audit" | "report";

export type Schedule = {
  readonly id: number;
  readonly what: ScheduleKind;
  /** Null is the whole group. */
  readonly practice: string | null;
  /** Of a report. */
  readonly format: string | null;
  readonly by: string;
  readonly at: string;
};

/** What a schedule prepared of a quarter. */
export type PreparedRow = {
  readonly schedule: number;
  readonly period: string;
  readonly practice: string | null;
  readonly audit: number | null;
  /** The file's name, of a report. */
  readonly name: string | null;
  readonly sha256: string | null;
  readonly at: string;
};

const within = "stopped_at is null and what = $2 and ($1::text[] is null or practice = any($1))";

/** The schedules in force within the reach, oldest first. */
export async function schedulesWithin(
  reach: FiguresReach,
  what: ScheduleKind,
): Promise<Schedule[]> {
  const { rows } = await pool().query<Schedule>(
    `select id, what, practice, format, by, ${isoSql("at")} as at from schedules where ${within} order by id`,
    [reach.practices, what],
  );
  return rows;
}

/** Adds a schedule. @throws Refused where the practice, or the group, is not within the reach */
export async function addSchedule(
  reach: FiguresReach,
  schedule: Pick<Schedule, "what" | "practice" | "format"> & { readonly userId: string },
): Promise<void> {
  const { what, practice, format, userId } = schedule;
  if (reach.practices !== null && (practice === null || !reach.practices.includes(practice)))
    throw new Refused("That practice, or the whole group, is not yours to prepare for.");
  await pool().query(
    "insert into schedules (what, practice, format, criteria, user_id, by) values ($1, $2, $3, '{}', $4, $5)",
    [what, practice, format, userId, reach.by],
  );
}

/** Ends a schedule; what it prepared stays. False where there is none within the reach. */
export async function stopSchedule(
  reach: FiguresReach,
  what: ScheduleKind,
  id: number,
): Promise<boolean> {
  const { rowCount } = await pool().query(
    `update schedules set stopped_at = now(), stopped_by = $4 where ${within} and id = $3`,
    [reach.practices, what, id, reach.by],
  );
  return rowCount === 1;
}

/** Claims a quarter for a schedule: true once, whoever else tries at the same time. */
export async function claimQuarter(
  _reach: FiguresReach,
  schedule: number,
  period: string,
): Promise<boolean> {
  const { rowCount } = await pool().query(
    "insert into prepared (schedule_id, period) values ($1, $2) on conflict do nothing",
    [schedule, period],
  );
  return rowCount === 1;
}

/** Keeps what was prepared, or, with null, gives the quarter free again as it could not be. */
export async function keepPrepared(
  _reach: FiguresReach,
  schedule: number,
  period: string,
  made: {
    readonly audit?: number;
    readonly file?: { readonly name: string; readonly bytes: Uint8Array; readonly sha256: string };
  } | null,
): Promise<void> {
  await (made
    ? pool().query(
        "update prepared set audit_id = $3, name = $4, file = $5, sha256 = $6 where schedule_id = $1 and period = $2",
        [
          ...[schedule, period, made.audit ?? null, made.file?.name ?? null],
          ...[made.file ? Buffer.from(made.file.bytes) : null, made.file?.sha256 ?? null],
        ],
      )
    : pool().query("delete from prepared where schedule_id = $1 and period = $2", [
        schedule,
        period,
      ]));
}

/** What was prepared within the reach, newest first; what is still being made is left out. */
export async function preparedWithin(
  reach: FiguresReach,
  what: ScheduleKind,
): Promise<PreparedRow[]> {
  const { rows } = await pool().query<PreparedRow>(
    `select p.schedule_id as schedule, p.period, s.practice, p.audit_id as audit, p.name, p.sha256, ${isoSql("p.at")} as at
     from prepared p join schedules s on s.id = p.schedule_id
     where s.what = $2 and ($1::text[] is null or s.practice = any($1)) and (p.audit_id is not null or p.name is not null)
     order by p.at desc, p.schedule_id`,
    [reach.practices, what],
  );
  return rows;
}

/** A prepared file; null where there is none within the reach. */
export async function preparedFile(
  reach: FiguresReach,
  schedule: number,
  period: string,
): Promise<{ readonly name: string; readonly bytes: Uint8Array<ArrayBuffer> } | null> {
  const { rows } = await pool().query<{ name: string; file: Buffer }>(
    `select p.name, p.file from prepared p join schedules s on s.id = p.schedule_id
     where s.what = 'report' and ($1::text[] is null or s.practice = any($1)) and p.schedule_id = $2 and p.period = $3 and p.name is not null`,
    [reach.practices, schedule, period],
  );
  return rows[0] ? { name: rows[0].name, bytes: new Uint8Array(rows[0].file) } : null;
}
