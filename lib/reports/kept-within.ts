import type { FiguresReach, OwnReach, RecordsReach } from "@/lib/access/reach";
import { revision } from "@/lib/store/facts/revision";
import { kept } from "./kept";

/**
 * What `compute` answers, kept until the records change, and apart for whoever sees other records.
 * @param question what is asked, apart from who asks; anything that JSON can tell apart
 */
export function keptWithin<Answer>(
  reach: FiguresReach | OwnReach | RecordsReach,
  question: unknown,
  compute: () => Promise<Answer>,
): Promise<Answer> {
  const within =
    "clinicianKey" in reach
      ? reach.clinicianKey
      : [reach.practices, "byClinician" in reach ? reach.byClinician : "records"];
  return kept(JSON.stringify([within, question]), () => revision(reach), compute);
}
