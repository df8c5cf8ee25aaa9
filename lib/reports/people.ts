import type { PeopleReach } from "@/lib/access/reach";
import { type Role, roles } from "@/lib/access/role";
import { addPersonWithin } from "@/lib/store/people/add-person";
import { type ClinicianKey, clinicianKeysWithin } from "@/lib/store/people/clinician-keys";
import { type GrantRow, type PersonRow, peopleWithin } from "@/lib/store/people/list-people";
import { placesWithin } from "@/lib/store/places/places-within";
import { passwordTrouble } from "@/lib/store/sign-in/password-rules";
import { moment } from "@/lib/views/day";
import { askedRole } from "./asked-role";
import { madePassword } from "./made-password";
import { personInput } from "./person-input";
import { readInput, type Wrong } from "./read-input";

/** One person as the page lists them. */
export type PersonView = {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly grants: readonly (GrantRow & { readonly where: string })[];
  /** Every role of theirs lies within the viewer's reach: they may be changed, not only seen. */
  readonly changeable: boolean;
  /** Local time of the first practice; null where no sign-in is kept. */
  readonly lastSignIn: string | null;
  readonly secondFactor: boolean;
};

/** What the page of people shows. */
export type PeopleView = {
  readonly people: readonly PersonView[];
  readonly practices: readonly { readonly code: string; readonly name: string }[];
  readonly clinicians: readonly ClinicianKey[];
  /** May roles of the whole group be given. */
  readonly ofGroup: boolean;
};

/** Someone who was added; `password` only where it was made here: it is told once and kept nowhere in clear. */
export type Added = {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly password: string | null;
};

/** A person as they are typed in: checked by personInput. */
export type PersonInput = {
  readonly name: string;
  readonly email: string;
  readonly password?: string;
  readonly role: Role;
  /** Null is the whole group. */
  readonly practice: string | null;
  /** P1/C01 or person:…, needed for a clinician. */
  readonly clinicianKey: string | null;
};

/** The people within the reach, and what roles can be given of. */
export async function listPeople(reach: PeopleReach): Promise<PeopleView> {
  const [people, practices, clinicians] = await Promise.all([
    peopleWithin(reach),
    placesWithin(reach),
    clinicianKeysWithin(reach),
  ]);
  const zone = practices[0]?.zone ?? "UTC";
  const where = ({ practice, clinicianKey }: GrantRow) => {
    const codes = clinicians.find((one) => one.key === clinicianKey)?.codes.join(", ");
    const place =
      practices.find((one) => one.code === practice)?.name ?? practice ?? "the whole group";
    return clinicianKey === null ? place : (codes ?? clinicianKey);
  };
  return {
    people: [...people]
      .sort((one, other) => firstRole(one) - firstRole(other))
      .map(({ lastSignIn, grants, ...person }) => ({
        ...person,
        grants: grants.map((grant) => ({ ...grant, where: where(grant) })),
        lastSignIn: lastSignIn && moment(lastSignIn, zone),
      })),
    practices: practices.map(({ code, name }) => ({ code, name })),
    clinicians,
    ofGroup: reach.practices === null,
  };
}

/**
 * Adds a person with one role. What is wrong comes back by field.
 *
 * @throws Refused where the role lies outside the reach
 */
export async function addPerson(
  reach: PeopleReach,
  input: PersonInput | Readonly<Record<string, unknown>>,
): Promise<{ added: Added } | { wrong: Wrong }> {
  const checked = readInput(personInput, input);
  if ("wrong" in checked) return checked;
  const { name, email, password } = checked.read;
  const trouble = password && passwordTrouble(password, [name, email]);
  if (trouble) return { wrong: { password: trouble } };
  const asked = await askedRole(reach, checked.read);
  if ("wrong" in asked) return asked;
  const made = password ? null : madePassword();
  const { grant } = asked;
  const person = { name, email, password: password ?? made ?? "", passedOn: made !== null, grant };
  const id = await addPersonWithin(reach, person);
  if (!id) return { wrong: { email: `${email} is somebody's already.` } };
  return { added: { id, name, email, role: grant.role, password: made } };
}

function firstRole(person: PersonRow): number {
  const held = person.grants.map((grant) => (roles as readonly string[]).indexOf(grant.role));
  return Math.min(...held, roles.length);
}
