import type { PeopleReach } from "@/lib/access/reach";
import { asHolder } from "../wall/as-whom";
import { changeWithin } from "./change-within";
import { namesWritten } from "./names-written";

/** What became of a leaver: what stands in place of the name, and whether it could be taken out everywhere. */
export type Left = { readonly under: string; readonly nameShared: boolean };

/**
 * A person leaves: the account goes with sessions, roles, notes and reflections, and where their name stood beside what they did
 * stands their clinician's code, or else what tells them from other leavers. Figures and signed audits stay. Where another account bears
 * the same name, the name stays: whose it is cannot be told. Throws as changeWithin.
 */
export async function leaveWithin(reach: PeopleReach, userId: string): Promise<Left> {
  // The name stands in rows that an administrator may not see: it is taken out past the wall. Whose account may be ended is the reach's.
  return asHolder(() => left(reach, userId));
}

async function left(reach: PeopleReach, userId: string): Promise<Left> {
  let done: Left = { under: "", nameShared: false };
  await changeWithin(reach, userId, async (tx) => {
    const user = await tx.user.findFirstOrThrow({
      where: { id: userId },
      include: { grants: { orderBy: { id: "asc" } } },
    });
    const key = user.grants.find((grant) => grant.clinicianKey)?.clinicianKey;
    const under = key ?? `left ${userId.slice(0, 8)}`;
    const nameShared = (await tx.user.count({ where: { name: user.name } })) > 1;
    await tx.reflection.deleteMany({ where: { userId } });
    await tx.user.delete({ where: { id: userId } });
    if (!nameShared)
      for (const [table, column] of namesWritten)
        await tx.$executeRawUnsafe(
          `update ${table} set ${column} = $1 where ${column} = $2`,
          under,
          user.name,
        );
    done = { under, nameShared };
  });
  return done;
}
