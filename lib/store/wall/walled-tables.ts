import { type TableName, tables } from "@/lib/records/tables";
import {
  allRecords,
  anybody,
  anywhere,
  only,
  openTo,
  ownId,
  ownKey,
  ownVisit,
  placesOf,
  practicesAs,
  recordsOf,
  type Who,
  within,
} from "./policy-words";

/** SQL conditions on a row: who may see it, and who may make, change or delete it. */
export type Wall = { readonly reads: string; readonly writes: string };

const lead: Who = { roles: ["clinical-lead"] };
const keeper: Who = { roles: ["record-keeper"] };
const officers: Who = { roles: ["clinical-lead", "quality-officer"] };
const administrator: Who = { roles: ["administrator"] };
const keepers: Who = { roles: ["record-keeper"], beyond: ["publishing"] };
const handedOut: Who = { roles: ["clinical-lead"], beyond: ["handing out"] };
const placeKeepers: Who = { roles: ["record-keeper", "administrator"] };
const people: Who = { roles: ["clinical-lead", "administrator"], beyond: ["signing in"] };

/** A table with a practice and a visit: the practice's, and that of whoever worked on the visit. What is derived is mostly this. */
const derived: Wall = {
  reads: `${recordsOf("practice")} or ${ownVisit("visit_id")}`,
  writes: within("practice", keeper),
};

/** A table whose rows hang on a visit. */
function ofVisit(table: string): Wall {
  const visit = (more: string) =>
    `exists (select from sessions v where v.id = ${table}.visit_id${more})`;
  return {
    reads: `${allRecords} or ${visit("")}`,
    writes: `${openTo(keeper)} or ${visit(` and ${within("v.practice", keeper)}`)}`,
  };
}

/** A table of an audit's: whoever runs it, and one's own where `own` says which row is. */
function ofAudit(table: string, own?: string): Wall {
  const led = (who: Who) =>
    `exists (select from audits a where a.id = ${table}.audit_id and ${within("a.practice", who)})`;
  const ownToo = own === undefined ? "" : ` or ${own}`;
  return { reads: `${led(handedOut)}${ownToo}`, writes: `${led(lead)}${ownToo}` };
}

/** A row's visit by the name that its practice gives it, which outlives an undone import. */
const namedVisit = (table: string) =>
  `exists (select from sessions v where v.practice = ${table}.practice and v.session_id = ${table}.session_id)`;
const sharedAudit = `(practice is null and ${ownKey} is not null or practice in (select practices_of_viewer()))`;

/** What lets people in: the sign-in's, one's own, and an administrator's to set anew or to end. */
const ofAccount: Wall = {
  reads: `${anywhere({ roles: ["administrator"], beyond: ["signing in", "handing out"] })} or user_id = ${ownId}`,
  writes: `${anywhere({ roles: ["administrator"], beyond: ["signing in"] })} or user_id = ${ownId}`,
};

/** Every table behind the wall. A new one is a line here, or among those that are not (open-tables). */
export const walledTables: Readonly<Record<string, Wall>> = {
  // What one practice's rows change may be derived anew in another: rows that wait, and may be of either.
  canal_facts: { ...derived, writes: within("practice", keepers) },
  visit_facts: { ...derived, writes: within("practice", keepers) },
  // Made and forgotten past the wall, by lib/store/month-units and triggers: what holds of a month does not depend on who asks.
  month_units: { reads: recordsOf("practice"), writes: only([]) },
  sessions: { ...derived, reads: `${recordsOf("practice")} or ${ownVisit("id")}` },
  ...Object.fromEntries(
    (Object.keys(tables) as TableName[])
      .filter((table) => !["sessions", "upkeep", "people"].includes(table))
      .map((table) => [table, ofVisit(table)]),
  ),
  upkeep: {
    // A visit's page shows what was done to its chair that day.
    reads: `${recordsOf("practice")} or ${ownKey} is not null and exists (select from sessions v
      where v.practice = upkeep.practice and v.chair = upkeep.chair and v.local_day = upkeep.day)`,
    writes: within("practice", keeper),
  },
  people: {
    reads: `${recordsOf("practice")} or ${anywhere({ roles: ["administrator"], beyond: ["signing in"] })}
      or 'person:' || person = ${ownKey} or practice || '/' || code = ${ownKey}`,
    writes: within("practice", keeper),
  },
  held: {
    reads: `${recordsOf("practice")} or practice is null and (
        ${anywhere(keeper)} and (session_id is null or not visit_is_elsewhere(session_id))
        or ${anywhere(officers)} and exists (select from sessions v where v.session_id = held.session_id))
      or ${ownKey} is not null and exists (select from sessions v where v.session_id = held.session_id and v.practice = coalesce(held.practice, v.practice))`,
    // What a file brings of other practices is held, and not theirs to let in.
    writes: `${within("practice", keepers)} or practice is null and ${anywhere(keeper)}`,
  },
  corrections: {
    reads: `${recordsOf("practice")} or ${namedVisit("corrections")}`,
    writes: within("practice", keeper),
  },
  imports: {
    // Until when records have come in is said beside figures.
    reads: `${openTo(keepers)} or ${anywhere(officers)} or ${anywhere(keeper)} and practices <@ ${practicesAs(keeper)}`,
    writes: anywhere(keeper),
  },
  import_files: { reads: anybody, writes: anywhere(keeper) },
  witnesses: { reads: anybody, writes: anywhere(keeper) },
  mends: {
    reads: `${openTo(keepers)} or ${anywhere(keeper)} and practices <@ ${practicesAs(keeper)}`,
    writes: anywhere(keeper),
  },
  mended_rows: {
    reads: `${openTo(keepers)} or exists (select from held h where h.id = mended_rows.held_id)`,
    writes: anywhere(keeper),
  },
  mappings: { reads: anywhere(keepers), writes: anywhere(keeper) },
  waiting_files: { reads: anywhere(keepers), writes: anywhere(keeper) },
  taken_files: { reads: anywhere(keepers), writes: anywhere(keeper) },
  practices: { reads: placesOf("code"), writes: within("code", placeKeepers) },
  chairs: { reads: placesOf("practice"), writes: within("practice", placeKeepers) },
  clinicians: {
    reads: `${recordsOf("practice")} or ${anywhere(administrator)} or practice || '/' || code = ${ownKey}`,
    writes: within("practice", placeKeepers),
  },
  criterion_versions: { reads: placesOf("practice"), writes: within("practice", lead) },
  own_terms: { reads: placesOf("practice"), writes: within("practice", lead) },
  entered_exceptions: {
    reads: `${recordsOf("practice")} or ${namedVisit("entered_exceptions")} or user_id = ${ownId}`,
    writes: `${within("practice", lead)} or ${namedVisit("entered_exceptions")} and ${ownKey} is not null`,
  },
  exception_queries: {
    reads: `${recordsOf("practice")} or ${namedVisit("exception_queries")}`,
    writes: `${within("practice", lead)} or ${namedVisit("exception_queries")} and ${ownKey} is not null`,
  },
  rebases: {
    reads: anywhere({ roles: [...officers.roles, "clinician"] }),
    writes: anywhere(lead),
  },
  exports: {
    reads: anywhere({ roles: [...officers.roles, "record-keeper"] }),
    writes: anywhere({ roles: [...officers.roles, "record-keeper"] }),
  },
  audits: {
    reads: `${within("practice", handedOut)} or ${sharedAudit}`,
    writes: within("practice", lead),
  },
  signed_audits: {
    reads: "exists (select from audits a where a.id = signed_audits.audit_id)",
    writes: ofAudit("signed_audits").writes,
  },
  audit_texts: ofAudit("audit_texts"),
  audit_looks: ofAudit("audit_looks"),
  audit_confirmations: ofAudit("audit_confirmations", `clinician_key = ${ownKey}`),
  audit_disputes: ofAudit("audit_disputes", `clinician_key = ${ownKey}`),
  audit_answers: ofAudit("audit_answers", `user_id = ${ownId}`),
  audit_readers: ofAudit("audit_readers", `user_id = ${ownId}`),
  audit_actions: ofAudit("audit_actions", `owner_id = ${ownId}`),
  audit_action_news: {
    reads: "exists (select from audit_actions a where a.id = audit_action_news.action_id)",
    writes: "exists (select from audit_actions a where a.id = audit_action_news.action_id)",
  },
  schedules: { reads: within("practice", officers), writes: within("practice", officers) },
  prepared: {
    reads: "exists (select from schedules s where s.id = prepared.schedule_id)",
    writes: "exists (select from schedules s where s.id = prepared.schedule_id)",
  },
  notes: {
    reads: `${only(["handing out"])} or user_id = ${ownId}`,
    writes: `${only([])} or user_id = ${ownId}`,
  },
  reflections: {
    reads: `${only(["handing out"])} or user_id = ${ownId}`,
    writes: `${only([])} or user_id = ${ownId}`,
  },
  users: {
    reads: `${anywhere(people)} or id = ${ownId}`,
    writes: `${anywhere({ roles: ["administrator"], beyond: ["signing in"] })} or id = ${ownId}`,
  },
  grants: {
    reads: `${anywhere(people)} or user_id = ${ownId}`,
    writes: within("practice", administrator),
  },
  sign_ins: ofAccount,
  accounts: ofAccount,
  two_factors: ofAccount,
  verifications: { reads: only(["signing in"]), writes: only(["signing in"]) },
};
