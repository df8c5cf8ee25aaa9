import type pg from "pg";
import type { TableName } from "@/lib/records/tables";

/** Creates the practices, chairs and clinicians that staged rows name and that are not yet known; an administrator confirms them later. */
export async function addPlaces(
  client: pg.ClientBase,
  table: TableName,
  { zone, practices }: { zone: string; practices: readonly string[] | null },
) {
  const within = "($1::text[] is null or practice = any($1))";
  await client.query(
    `insert into practices (code, name, zone)
     select distinct practice, practice, $2 from staged_${table} where ${within} on conflict do nothing`,
    [practices, zone],
  );
  const { chair, clinicians } = naming[table] ?? {};
  if (chair)
    await client.query(
      `insert into chairs (practice, code)
       select distinct practice, ${chair} from staged_${table} where ${within} on conflict do nothing`,
      [practices],
    );
  for (const code of clinicians ?? [])
    await client.query(
      `insert into clinicians (practice, code)
       select distinct practice, ${code} from staged_${table} where ${code} is not null and ${within} on conflict do nothing`,
      [practices],
    );
}

/** The columns that name a chair or a clinician of the row's practice. */
const naming: Partial<
  Record<TableName, { readonly chair?: string; readonly clinicians?: readonly string[] }>
> = {
  sessions: { chair: "chair", clinicians: ["clinician", "supervisor"] },
  upkeep: { chair: "chair" },
  people: { clinicians: ["code"] },
};

/**
 * Creates the codes of clinicians that only a canal names, of the visits whose facts were made anew just now. Those that are there are
 * left out and not merely passed over: visits of other practices may be among these, where nothing may be written.
 */
export async function addCanalClinicians(client: pg.ClientBase) {
  await client.query(
    `insert into clinicians (practice, code)
     select practice, clinician from (select distinct f.practice, f.clinician from renewing r join canal_facts f using (visit_id)) n
     where not exists (select from clinicians k where k.practice = n.practice and k.code = n.clinician)`,
  );
}

/** Takes back codes that only rows now gone had named, unless an administrator has confirmed them. */
export async function dropUnusedPlaces(client: pg.ClientBase) {
  await client.query(`delete from chairs c where not confirmed
    and not exists (select from sessions v where v.practice = c.practice and v.chair = c.code)
    and not exists (select from upkeep u where u.practice = c.practice and u.chair = c.code)`);
  await client.query(`delete from clinicians c where not confirmed
    and not exists (select from sessions v where v.practice = c.practice and c.code in (v.clinician, v.supervisor))
    and not exists (select from canals k join sessions v on v.id = k.visit_id where v.practice = c.practice and k.clinician = c.code)
    and not exists (select from people p where p.practice = c.practice and p.code = c.code)`);
  const used = namingPractices.map(
    (table) => `not exists (select from ${table} t where t.practice = p.code)`,
  );
  await client.query(`delete from practices p where not confirmed and ${used.join(" and ")}`);
}

/** Every table that can name a practice: what people wrote for it outlives its records. */
const namingPractices = [
  "sessions",
  "upkeep",
  "people",
  "chairs",
  "clinicians",
  "grants",
  "criterion_versions",
  "own_terms",
  "entered_exceptions",
  "exception_queries",
] as const;
