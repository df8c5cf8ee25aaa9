import type { PeopleReach } from "@/lib/access/reach";
import type { LogLine } from "@/lib/records/log-line";
import { isoSql } from "../audits/audits";
import { pool } from "../database";

const columns = `id::float8 as id, ${isoSql("at")} as at, kind, person, what, about, prev, hash`;

/** A line with whose it is; no name where the account is gone or there was none. */
export type LineOfPerson = LogLine & {
  readonly name: string | null;
  readonly email: string | null;
};

/**
 * Lines newest first. An administrator of practices is shown the lines of people all of whose roles lie there; one of the group,
 * everybody's.
 */
export async function linesWithin(
  reach: PeopleReach,
  asked: {
    readonly person?: string;
    /** Half-open, as ISO 8601. */
    readonly from?: string;
    readonly to?: string;
    /** Only lines before this one. */
    readonly before?: number;
    readonly limit: number;
  },
): Promise<LineOfPerson[]> {
  const { rows } = await pool().query<LineOfPerson>(
    `select l.*, u.name, u.email from (
       select ${columns} from public.log_lines
       where ($1::text[] is null or person in (
           select user_id from grants group by user_id having bool_and(coalesce(practice = any($1), false))))
         and ($2::text is null or person = $2)
         and ($3::timestamptz is null or at >= $3) and ($4::timestamptz is null or at < $4)
         and ($5::bigint is null or id < $5)
       order by log_lines.id desc limit $6) l
     left join users u on u.id = l.person order by l.id desc`,
    [
      reach.practices,
      asked.person ?? null,
      asked.from ?? null,
      asked.to ?? null,
      asked.before ?? null,
      asked.limit,
    ],
  );
  return rows;
}

/** Every line in order, a batch at a time. Only an administrator of the group can check it all. */
export async function* everyLine(reach: PeopleReach, batch = 5_000): AsyncGenerator<LogLine[]> {
  if (reach.practices !== null) return;
  for (let after = 0; ; ) {
    const { rows } = await pool().query<LogLine>(
      `select ${columns} from public.log_lines where log_lines.id > $1 order by log_lines.id limit $2`,
      [after, batch],
    );
    const last = rows.at(-1);
    if (!last) return;
    yield rows;
    after = last.id;
  }
}
