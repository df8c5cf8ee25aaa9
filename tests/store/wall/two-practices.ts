import type { Values } from "@/lib/records/column";
import { pool } from "@/lib/store/database";
import { bringIn, canal, delivery, use, visit } from "../bring-in";

/** Whose visits there are: two of one practice by two clinicians, one of another. */
export const visits = ["OAK C01", "OAK C02", "ELM C01"] as const;

const tables = {
  canals: canal,
  irrigation: delivery,
  instruments: { ...use, separated: 1 },
  followups: { canal: "MB1", seq: 1, day: "2026-07-20", management: "left" },
  steps: { canal: "MB1", step: "isolation", status: "yes" },
  exceptions: { canal: "MB1", criterion: "timer-reset", reason: "emergency" },
  incidents: { kind: "needle-stick" },
};

/**
 * Fills an empty database, as its owner, with a row of everything for each visit, practice and person, each named after what it belongs
 * to: a visit's number is its practice and clinician.
 */
export async function fillTwoPractices(): Promise<void> {
  const sessions = visits.map((session_id): Values => {
    const [practice = "", clinician = ""] = session_id.split(" ");
    return { ...visit, session_id, practice, chair: `${practice}-1`, clinician };
  });
  const ofVisits = (row: Values) => visits.map((session_id) => ({ ...row, session_id }));
  await bringIn({
    people: ["OAK", "ELM"].map((practice) => ({
      ...{ person: `${practice} person`, practice, code: "C09", from: "2026-01-01" },
    })),
    sessions,
    ...Object.fromEntries(Object.entries(tables).map(([name, row]) => [name, ofVisits(row)])),
    upkeep: ["OAK", "ELM"].map((practice) => ({
      ...{ practice, chair: `${practice}-1`, device: "unit", day: "2026-07-03" },
      ...{ task: "waterline-flush", status: "done" },
    })),
  });
  await pool().query(perVisit);
  await pool().query(perPractice);
  await pool().query(perPerson);
}

const perVisit = `
  insert into held (table_name, digest, kind, practice, session_id, key, raw, reasons, file_id, line)
    select 'canals', session_id, 'check', practice, session_id, session_id, '{}', '[]', 1, 1 from sessions;
  insert into corrections (table_name, row_id, held_id, practice, session_id, key, before, after, rule, by)
    select 'sessions', id, 1, practice, session_id, session_id, '{"row": {"tooth": "26"}}', '{"row": {"tooth": "27"}}', 'asked', 'somebody' from sessions;
  insert into entered_exceptions (practice, session_id, canal, criterion, reason, user_id, by)
    select practice, session_id, '', 'isolation', 'emergency', session_id, 'somebody' from sessions;
  insert into exception_queries (practice, session_id, canal, criterion, question, by)
    select practice, session_id, '', 'isolation', 'why', 'somebody' from sessions;
  insert into mended_rows (mend_id, held_id, before, places) select 1, id, '{}', '[]' from held where digest in (select session_id from sessions)`;

const perPractice = `
  insert into criterion_versions (practice, criterion, definition, in_force, "from", written_on, reason, by)
    select code, 'isolation', '{}', false, '2020-01-01', '2020-01-01', 'x', 'x' from practices;
  insert into month_units (practice, month, measure, content) select code, '2026-07-01', 'x', '[]' from practices;
  insert into own_terms (practice, kind, code, words, by) select code, 'step', 'own-' || code, code, 'x' from practices;
  insert into mends (table_name, changes, rows, accepted, still_held, practices, by)
    select 'canals', '{}', 1, 0, 1, array[code], 'x' from practices;
  insert into audits (practice, period, criteria, by) select code, '2026-Q3', '{isolation}', 'x' from practices order by code;
  insert into audits (practice, period, criteria, by) values (null, '2026-Q3', '{isolation}', 'x');
  insert into signed_audits (audit_id, version, content, sha256, computed_sha256, by, at) select id, 1, '{}', '', '', 'x', now() from audits;
  insert into audit_texts (audit_id, key, revision, text, by) select id, 'aim', 1, 'x', 'x' from audits;
  insert into audit_looks (audit_id, flag, step, by) select id, 'x', 'x', 'x' from audits;
  insert into audit_actions (audit_id, what, why, owner, owner_id, due, know, by) select id, 'x', 'x', 'x', 'OAK C01', '2027-01-01', 'x', 'x' from audits where practice = 'OAK';
  insert into audit_actions (audit_id, what, why, owner, due, know, by) select id, 'x', 'x', 'x', '2027-01-01', 'x', 'x' from audits where practice = 'ELM';
  insert into audit_action_news (action_id, state, text, by) select id, 'open', 'x', 'x' from audit_actions;
  insert into schedules (what, practice, criteria, user_id, by) select 'report', code, '{}', code, 'x' from practices;
  insert into schedules (what, practice, criteria, user_id, by) values ('report', null, '{}', 'group', 'x');
  insert into prepared (schedule_id, period) select id, '2026-Q2' from schedules`;

/** Two people, each the clinician of a visit of OAK's, and one who keeps nothing but accounts. */
const perPerson = `
  insert into users (id, name, email, updated_at) select s, s, replace(s, ' ', '') || '@example.org', now() from unnest(array['OAK C01', 'OAK C02']) s;
  insert into grants (user_id, role, practice, clinician_key) select id, 'clinician', 'OAK', replace(id, ' ', '/') from users;
  insert into accounts (id, account_id, provider_id, user_id, updated_at) select id, id, 'credential', id, now() from users;
  insert into sign_ins (id, expires_at, token, updated_at, user_id) select id, now(), id, now(), id from users;
  insert into two_factors (id, secret, backup_codes, user_id) select id, 'x', 'x', id from users;
  insert into verifications (id, identifier, value, expires_at, updated_at) select id, id, id, now(), now() from users;
  insert into notes (user_id, period, text) select id, '2026-Q3', 'x' from users;
  insert into reflections (audit_id, user_id, text) select a.id, u.id, 'x' from audits a, users u where a.practice = 'OAK';
  insert into audit_confirmations (audit_id, clinician_key, by) select a.id, replace(u.id, ' ', '/'), 'x' from audits a, users u where a.practice = 'OAK';
  insert into audit_disputes (audit_id, clinician_key, practice, session_id, kind, note, by)
    select a.id, replace(u.id, ' ', '/'), 'OAK', u.id, 'wrong', 'x', 'x' from audits a, users u where a.practice = 'OAK';
  insert into audit_answers (audit_id, user_id, clinician_key, text, by) select a.id, u.id, replace(u.id, ' ', '/'), 'x', 'x' from audits a, users u where a.practice = 'OAK';
  insert into audit_readers (audit_id, user_id, clinician_key) select a.id, u.id, replace(u.id, ' ', '/') from audits a, users u where a.practice = 'OAK';
  insert into mappings (name, version, definition, by) values ('a mapping', 1, '{}', 'x');
  insert into waiting_files (name, kept, bytes, zone, by) values ('a file', 'x', 1, 'UTC', 'x');
  insert into taken_files (sha256, name, import_id) values ('x', 'a file', 1);
  insert into rebases (measure, subject, kind, month, reason, by) values ('volume', '', 'group', '2026-07', 'x', 'x');
  insert into exports (what, period, scope, by, sha256) values ('x', '2026-Q3', '["OAK"]', 'x', 'x')`;
