import type { PeopleReach } from "@/lib/access/reach";
import { pool } from "@/lib/store/database";

/** A clinician whose figures can be joined to a sign-in: the key, and the codes that stand behind it. */
export type ClinicianKey = {
  readonly key: string;
  readonly practices: readonly string[];
  readonly codes: readonly string[];
};

/**
 * The clinicians within the reach. A person known by several codes (table `people` of the records) is one, and
 * is within reach only where all their practices are, as their figures come from all of them.
 */
export async function clinicianKeysWithin(reach: PeopleReach): Promise<ClinicianKey[]> {
  const { rows } = await pool().query<ClinicianKey>(
    `with keyed as (
       select distinct coalesce('person:' || p.person, c.practice || '/' || c.code) as key, c.practice, c.code
       from clinicians c left join people p on p.practice = c.practice and p.code = c.code
     )
     select key, array_agg(distinct practice order by practice) as practices,
       array_agg(practice || '/' || code order by practice, code) as codes
     from keyed group by key
     having $1::text[] is null or bool_and(practice = any($1))
     order by min(practice), min(code), key`,
    [reach.practices],
  );
  return rows;
}

/**
 * The key under which figures are kept for a key as it was given: P1/C01 becomes the person's where the records say
 * who that is. A code that has been several people's stays as it is. Needs no reach: it names, and shows nothing.
 */
export async function keptClinicianKey(given: string): Promise<string> {
  const { rows } = await pool().query<{ person: string }>(
    "select distinct person from people where practice || '/' || code = $1",
    [given],
  );
  return rows.length === 1 && rows[0] ? `person:${rows[0].person}` : given;
}
