import pg from "pg";
import { type Role, roles } from "@/lib/access/role";
import type { Grant } from "@/lib/access/viewer";

/** What the database is told of whoever asks, for the length of a transaction. */
export type Told = {
  readonly as: "viewer" | "signing in" | "comparing" | "publishing" | "handing out";
  /** Id of the account. */
  readonly person: string;
  readonly grants: readonly Grant[];
};

/** Stands among the practices of a role that is held in the whole group. */
export const everyPractice = "*";

/** SQL that tells it. Each `set local` ends with the transaction; none takes a snapshot, so that an isolation level may follow. */
export function toldOf({ as, person, grants }: Told): string {
  const own = grants.find(({ role, clinicianKey }) => role === "clinician" && clinicianKey);
  const all: Record<string, string> = { standing: as, person, worker: own?.clinicianKey ?? "" };
  for (const role of roles) all[settingOf(role)] = practicesOf([role], grants);
  const isClinician = grants.some(({ role }) => role === "clinician");
  all.places = isClinician || as !== "viewer" ? `{${everyPractice}}` : practicesOf(staff, grants);
  all.records = beyondOwn.includes(as) ? `{${everyPractice}}` : practicesOf(insiders, grants);
  return Object.entries(all)
    .map(([name, value]) => `set local canal_audit.${name} = ${pg.escapeLiteral(value)}`)
    .join("; ");
}

/** The setting that holds the practices of a role. */
export function settingOf(role: Role): string {
  return role.replace("-", "_");
}

/** Who works with the records of a practice; made into one list, as nearly every query asks for it. */
const insiders: readonly Role[] = ["clinical-lead", "quality-officer", "record-keeper"];
/** Who looks after a practice; a clinician may work at several, and no protocol is a secret to one. */
const staff: readonly Role[] = [...insiders, "administrator"];
/** Who reads records of every practice. */
const beyondOwn: readonly Told["as"][] = ["comparing", "publishing", "handing out"];

/** As an array of PostgreSQL; every practice alone where a role is held in the whole group. */
function practicesOf(held: readonly Role[], grants: readonly Grant[]): string {
  const practices = grants.filter(({ role }) => held.includes(role)).map((grant) => grant.practice);
  if (practices.includes(everyPractice)) throw new RangeError("no practice has that code");
  if (practices.includes(null)) return `{${everyPractice}}`;
  return `{${practices.map((code) => JSON.stringify(code)).join(",")}}`;
}
