import { randomUUID } from "node:crypto";
import { hashPassword } from "better-auth/crypto";
import { mustCover } from "@/lib/access/people-bounds";
import type { PeopleReach } from "@/lib/access/reach";
import type { Grant } from "@/lib/access/viewer";
import { prisma } from "@/lib/store/database";

/** A person to be added, already checked. */
export type NewPerson = {
  readonly name: string;
  /** Lower case. */
  readonly email: string;
  readonly password: string;
  /** It was made here and is passed on by another: to be changed at the first sign-in. */
  readonly passedOn: boolean;
  readonly grant: Grant;
};

/**
 * Adds a person with a password and a first role, all or nothing. The account is as better-auth keeps those of
 * email and password (provider "credential"), written here so that one transaction holds it and the role.
 *
 * @returns the person's id; undefined where the email is taken
 */
export async function addPersonWithin(
  reach: PeopleReach,
  person: NewPerson,
): Promise<string | undefined> {
  mustCover(reach, person.grant.practice);
  const id = randomUUID();
  const password = await hashPassword(person.password);
  return prisma().$transaction(async (tx) => {
    const { name, email, passedOn, grant } = person;
    const made = await tx.user.createMany({
      data: { id, name, email, emailVerified: true, passwordPassedOn: passedOn },
      skipDuplicates: true,
    });
    if (made.count === 0) return undefined;
    await tx.account.create({
      data: { id: randomUUID(), accountId: id, providerId: "credential", userId: id, password },
    });
    await tx.grant.create({ data: { userId: id, ...grant } });
    return id;
  });
}
