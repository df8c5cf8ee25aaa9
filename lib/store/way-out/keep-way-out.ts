import type { RecordsReach } from "@/lib/access/reach";
import { prisma } from "../database";

/** Keeps that records left the house, beside the other exports. An empty list of practices is the whole group. */
export async function keepWayOut(
  reach: RecordsReach,
  practices: readonly string[],
  sha256: string,
): Promise<void> {
  await prisma().export.create({
    data: {
      what: "all records",
      period: "all days",
      scope: JSON.stringify([...practices].sort()),
      by: reach.by,
      sha256,
    },
  });
}
