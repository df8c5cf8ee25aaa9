import { covers } from "@/lib/access/people-bounds";
import type { NotesReach, PeopleReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { isoSql } from "../audits/audits";
import { pool, prisma } from "../database";
import { handingOut } from "../wall/as-whom";
import { NoSuchPerson } from "./change-within";

/** What is kept about a person, by what it is; each a list of plain rows. */
export type PersonData = Readonly<Record<string, readonly Readonly<Record<string, unknown>>[]>>;

/** What the person asked for themselves: with the texts that are theirs alone. */
export async function ownData(reach: NotesReach): Promise<PersonData> {
  return dataOf(reach.userId, true);
}

/**
 * What an administrator hands out on request. That there are private notes and reflections is told, what they say is not.
 *
 * @throws NoSuchPerson, Refused where a role of theirs lies outside the reach
 */
export async function personDataWithin(reach: PeopleReach, userId: string): Promise<PersonData> {
  const user = await prisma().user.findFirst({ where: { id: userId }, include: { grants: true } });
  const seen = user?.grants.some(({ practice }) => covers(reach, practice));
  if (!user || (reach.practices !== null && !seen)) throw new NoSuchPerson();
  if (!user.grants.every(({ practice }) => covers(reach, practice)))
    throw new Refused(
      "This person has a role outside the practices that you administer; an administrator of the group can hand out what is kept about them.",
    );
  return handingOut(() => dataOf(userId, false));
}

/** $1 is the account, $2 whether private texts are given. Keys of clinicians are those of the account's grants. */
const questions: Readonly<Record<string, string>> = {
  account: `select id, name, email, ${isoSql("created_at")} as since from users where id = $1`,
  roles:
    "select role, practice, clinician_key as clinician from grants where user_id = $1 order by id",
  sessions: `select ${isoSql("created_at")} as began, ${isoSql("expires_at")} as ends, ip_address as address, user_agent as browser
    from sign_ins where user_id = $1 order by created_at`,
  notes: `select period, ${isoSql("saved_at")} as saved, case when $2 then text end as text from notes where user_id = $1 order by period`,
  reflections: `select audit_id as audit, ${isoSql("saved_at")} as saved, case when $2 then text end as text
    from reflections where user_id = $1 order by audit_id`,
  answers: `select audit_id as audit, clinician_key as clinician, text, ${isoSql("at")} as at
    from audit_answers where user_id = $1 order by audit_id`,
  audits_read: `select audit_id as audit, ${isoSql("first_at")} as first, ${isoSql("last_at")} as last
    from audit_readers where user_id = $1 order by audit_id`,
  confirmations: `select audit_id as audit, clinician_key as clinician, ${isoSql("at")} as at from audit_confirmations
    where clinician_key in (select clinician_key from grants where user_id = $1) order by audit_id`,
  disputes: `select audit_id as audit, practice, session_id as visit, kind, note, ${isoSql("at")} as at, answer,
      ${isoSql("answered_at")} as answered, ${isoSql("withdrawn_at")} as withdrawn
    from audit_disputes where clinician_key in (select clinician_key from grants where user_id = $1) order by id`,
  actions: `select id, audit_id as audit, what, due::text, ${isoSql("at")} as at from audit_actions where owner_id = $1 order by id`,
  exceptions: `select practice, session_id as visit, canal, criterion, reason, note, ${isoSql("at")} as at,
      ${isoSql("withdrawn_at")} as withdrawn from entered_exceptions where user_id = $1 order by id`,
  log: `select id::float8 as line, ${isoSql("at")} as at, kind as did, what, about from public.log_lines
    where person = $1 order by log_lines.id`,
};

async function dataOf(userId: string, withTexts: boolean): Promise<PersonData> {
  const found = await Promise.all(
    Object.entries(questions).map(async ([name, sql]) => {
      const given = sql.includes("$2") ? [userId, withTexts] : [userId];
      const { rows } = await pool().query<Record<string, unknown>>(sql, given);
      return [name, rows] as const;
    }),
  );
  return Object.fromEntries(found);
}
