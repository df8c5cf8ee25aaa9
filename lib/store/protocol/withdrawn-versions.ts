import type { ProtocolReach } from "@/lib/access/reach";
import { prisma } from "../database";

/** A version that was withdrawn before it began. */
export type WithdrawnVersion = {
  readonly id: number;
  readonly from: string;
  readonly inForce: boolean;
  readonly reason: string;
  readonly by: string;
  readonly withdrawnBy: string;
  readonly withdrawnAt: Date;
};

/** What was withdrawn of a criterion in a practice, the latest first; nothing where the practice is beyond the reach. */
export async function withdrawnVersions(
  reach: ProtocolReach,
  practice: string,
  criterion: string,
): Promise<WithdrawnVersion[]> {
  if (reach.practices?.includes(practice) === false) return [];
  const rows = await prisma().criterionVersion.findMany({
    where: { practice, criterion, withdrawnAt: { not: null } },
    orderBy: { id: "desc" },
  });
  return rows.flatMap(({ id, from, inForce, reason, by, withdrawnBy, withdrawnAt }) =>
    withdrawnAt
      ? [
          {
            ...{ id, from: from.toISOString().slice(0, 10), inForce, reason, by },
            ...{ withdrawnBy: withdrawnBy ?? "", withdrawnAt },
          },
        ]
      : [],
  );
}
