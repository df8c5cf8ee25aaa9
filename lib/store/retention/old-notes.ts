import type { PeopleReach } from "@/lib/access/reach";
import { pool } from "../database";
import { ofGroup } from "./periods";

/** How many private notes and reflections were last saved before the first day that is kept. */
export async function oldNotes(reach: PeopleReach, from: string): Promise<number> {
  ofGroup(reach);
  return one(
    `select ((select count(*) from notes where saved_at < $1::date) + (select count(*) from reflections where saved_at < $1::date))::int as n`,
    from,
  );
}

/** Deletes them. */
export async function deleteOldNotes(reach: PeopleReach, from: string): Promise<number> {
  ofGroup(reach);
  return one(
    `with n as (delete from notes where saved_at < $1::date returning 1), r as (delete from reflections where saved_at < $1::date returning 1)
     select ((select count(*) from n) + (select count(*) from r))::int as n`,
    from,
  );
}

/** How many prepared files are older than that. */
export async function oldPrepared(reach: PeopleReach, from: string): Promise<number> {
  ofGroup(reach);
  return one(
    "select count(*)::int as n from prepared where file is not null and at < $1::date",
    from,
  );
}

/** Deletes the files; that they were prepared, with name and hash, stays, so that they are not prepared again. */
export async function deleteOldPrepared(reach: PeopleReach, from: string): Promise<number> {
  ofGroup(reach);
  return one(
    `with n as (update prepared set file = null where file is not null and at < $1::date returning 1) select count(*)::int as n from n`,
    from,
  );
}

async function one(sql: string, from: string): Promise<number> {
  const { rows } = await pool().query<{ n: number }>(sql, [from]);
  return rows[0]?.n ?? 0;
}
