import { covers } from "@/lib/access/people-bounds";
import type { PeopleReach } from "@/lib/access/reach";
import { prisma } from "@/lib/store/database";

/** One role as it is stored. */
export type GrantRow = {
  readonly id: number;
  readonly role: string;
  readonly practice: string | null;
  readonly clinicianKey: string | null;
};

/** A person with the roles that lie within the reach. */
export type PersonRow = {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly grants: readonly GrantRow[];
  /** Every role of theirs lies within the reach: they may be changed, not only seen. */
  readonly changeable: boolean;
  /** Their newest session that is kept; null where there is none. */
  readonly lastSignIn: Date | null;
  /** A code is asked for at their sign-in. */
  readonly secondFactor: boolean;
};

/** Everybody of whom at least one role lies within the reach, by name; an administrator of the group sees all. */
export async function peopleWithin(reach: PeopleReach): Promise<PersonRow[]> {
  const { practices } = reach;
  const users = await prisma().user.findMany({
    where: practices === null ? {} : { grants: { some: { practice: { in: [...practices] } } } },
    select: {
      id: true,
      name: true,
      email: true,
      twoFactorEnabled: true,
      grants: {
        select: { id: true, role: true, practice: true, clinicianKey: true },
        orderBy: { id: "asc" },
      },
      signIns: { select: { createdAt: true }, orderBy: { createdAt: "desc" }, take: 1 },
    },
    orderBy: [{ name: "asc" }, { email: "asc" }],
  });
  return users.map(({ signIns, grants, twoFactorEnabled, ...user }) => ({
    ...user,
    grants: grants.filter((grant) => covers(reach, grant.practice)),
    changeable: grants.every((grant) => covers(reach, grant.practice)),
    lastSignIn: signIns[0]?.createdAt ?? null,
    secondFactor: twoFactorEnabled,
  }));
}
