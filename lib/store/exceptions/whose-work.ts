import type pg from "pg";
import type { OwnReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { pool } from "../database";
import type { VisitHead } from "../visit/visit-head";
import type { ExceptionKey } from "./exception-key";

/** What of a visit is the clinician's own work. */
export type OwnWork = {
  /** The visit is theirs. */
  readonly visit: boolean;
  /** Their canals. */
  readonly canals: readonly string[];
  /** The visit and each of its canals are theirs. */
  readonly whole: boolean;
};

/** SQL: the key of whoever did the work that an exception is about, of a visit `f` and a canal. */
export function workerOf(canal: string): string {
  return `coalesce((select c.worker from canal_facts c where c.visit_id = f.visit_id and c.canal = ${canal}), f.worker)`;
}

/** What of a visit is one's own. Only a head that was within reach leads here. */
export async function ownWork(reach: OwnReach, head: VisitHead): Promise<OwnWork> {
  const { rows } = await pool().query<OwnWork>(
    `select f.worker = $2 as visit,
       coalesce(array_agg(c.canal order by c.canal) filter (where c.worker = $2), '{}') as canals,
       f.worker = $2 and coalesce(bool_and(c.worker = $2), true) as whole
     from visit_facts f left join canal_facts c using (visit_id) where f.visit_id = $1 group by f.worker`,
    [head.id, reach.clinicianKey],
  );
  return rows[0] ?? { visit: false, canals: [], whole: false };
}

/**
 * The visit's number, where what the key names is the clinician's own work.
 *
 * @throws Refused where it is another's, and in the same words where there is no such visit or canal
 */
export async function requireOwn(
  client: pg.ClientBase,
  reach: OwnReach,
  { practice, sessionId, canal }: ExceptionKey,
): Promise<string> {
  const { rows } = await client.query<{ id: string }>(
    `select f.visit_id::text as id from sessions v join visit_facts f on f.visit_id = v.id
     where v.practice = $1 and v.session_id = $2 and ${workerOf("$3")} = $4
       and ($3 = '' or exists (select from canals c where c.visit_id = v.id and c.canal = $3))`,
    [practice, sessionId, canal, reach.clinicianKey],
  );
  const [own] = rows;
  if (!own) throw new Refused("Exceptions are for whoever did the work; this is none of yours.");
  return own.id;
}
