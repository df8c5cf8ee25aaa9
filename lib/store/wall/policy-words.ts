import type { Role } from "@/lib/access/role";
import { everyPractice, settingOf, type Told } from "./told-sql";

/*
 * The words that policies are written in: SQL over what a transaction was told (told-sql). All that does not depend on the row stands in
 * a scalar subselect, which PostgreSQL answers once a query.
 */

/** Who may see or write a row. */
export type Who = {
  /** Those who hold one of these roles, in the practice where one is meant. */
  readonly roles: readonly Role[];
  /** And who reads beyond what is theirs. The holder always does. */
  readonly beyond?: readonly Told["as"][];
};

/** The row's practice is one of theirs; the whole group's where it is null. */
export function within(practice: string, who: Who): string {
  return `(${openTo(who)} or ${practice} = any((select ${practicesOf(who.roles)})::text[]))`;
}

/** Records of every practice are read: by who works with those of the group, or reads beyond their own (told-sql). */
export const allRecords = `(select ${setting("records")} = '{${everyPractice}}')`;

/** The row's practice is one whose records are read. Short, as planning it is what it costs. */
export function recordsOf(practice: string): string {
  return `(${allRecords} or ${practice} = any((select ${setting("records")})::text[]))`;
}

/** The row tells of a practice and what holds there, and the practice is one of theirs; any, to a clinician. */
export function placesOf(practice: string): string {
  const places = setting("places");
  return `((select ${places} = '{${everyPractice}}' or ${isAs([])}) or ${practice} = any((select ${places})::text[]))`;
}

/** They hold such a role anywhere. */
export function anywhere({ roles, beyond = [] }: Who): string {
  return `(select ${isAs(beyond)} or ${practicesOf(roles)} <> '{}')`;
}

/** The row needs no looking at: they see those of every practice. */
export function openTo({ roles, beyond = [] }: Who): string {
  return `(select ${isAs(beyond)} or '${everyPractice}' = any(${practicesOf(roles)}))`;
}

/** The practices of which they hold such a role, as an array. */
export function practicesAs({ roles }: Who): string {
  return `(select ${practicesOf(roles)})`;
}

/** The key of the viewer as a clinician; null for who is none. */
export const ownKey = `(select ${setting("worker")})`;

/** The viewer's account. */
export const ownId = `(select ${setting("person")})`;

/** Somebody is told of, whatever their roles. */
export const anybody = `(select ${setting("person")} is not null or ${isAs(["signing in"])})`;

/** What only the holder, and those named, may see. */
export function only(beyond: readonly Told["as"][]): string {
  return `(select ${isAs(beyond)})`;
}

/** The visit of the row is one on which the viewer worked: theirs, or else one with a canal that is. */
export function ownVisit(visitId: string): string {
  return `${visitId} in (select visits_of_viewer()) or ${visitId} in (select visits_of_canals_of_viewer())`;
}

/** SQL: what a transaction was told; null where nothing. */
export function setting(name: string): string {
  return `nullif(current_setting('canal_audit.${name}', true), '')`;
}

export function practicesOf(roles: readonly Role[]): string {
  const lists = roles.map((role) => `coalesce(${setting(settingOf(role))}, '{}')::text[]`);
  return lists.length > 0 ? `(${lists.join(" || ")})` : "'{}'::text[]";
}

function isAs(beyond: readonly Told["as"][]): string {
  const names = ["holder", ...beyond].map((name) => `'${name}'`).join(", ");
  return `coalesce(current_setting('canal_audit.standing', true) in (${names}), false)`;
}
