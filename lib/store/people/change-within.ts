import { covers } from "@/lib/access/people-bounds";
import type { PeopleReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { prisma } from "@/lib/store/database";
import type { Prisma } from "@/prisma/client/client";

/** A change that would leave nobody to administer; nothing was changed. */
export class LastAdministrator extends Error {
  override readonly name = "LastAdministrator";
}

/** There is no such person (any more). */
export class NoSuchPerson extends Error {
  override readonly name = "NoSuchPerson";
}

/**
 * Changes one person in a transaction, one such change at a time.
 *
 * @throws Refused where a role of theirs lies outside the reach, NoSuchPerson, LastAdministrator
 */
export async function changeWithin(
  reach: PeopleReach,
  userId: string,
  change: (tx: Prisma.TransactionClient) => Promise<void>,
): Promise<void> {
  await prisma().$transaction(async (tx) => {
    // Two administrators who remove each other at once must not both succeed.
    await tx.$executeRaw`select pg_advisory_xact_lock(20261103)`;
    await mustBeWithin(tx, reach, userId);
    const before = await administrators(tx);
    await change(tx);
    const after = await administrators(tx);
    if (after.all === 0 || (before.group > 0 && after.group === 0)) throw new LastAdministrator();
  });
}

async function mustBeWithin(tx: Prisma.TransactionClient, reach: PeopleReach, userId: string) {
  const user = await tx.user.findFirst({ where: { id: userId }, include: { grants: true } });
  if (!user) throw new NoSuchPerson();
  const grants = user.grants;
  const within = grants.every((grant) => covers(reach, grant.practice));
  if (!within || (grants.length === 0 && reach.practices !== null)) {
    throw new Refused(
      "This person has a role outside the practices that you administer; an administrator of the group can change them.",
    );
  }
}

async function administrators(tx: Prisma.TransactionClient) {
  const grants = await tx.grant.findMany({ where: { role: "administrator" } });
  return { all: grants.length, group: grants.filter((grant) => grant.practice === null).length };
}
