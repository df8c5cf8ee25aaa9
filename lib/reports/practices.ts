import type { RecordsReach } from "@/lib/access/reach";
import { zonesOfPractices } from "@/lib/store/records/practices";

/** Does a practice of that code exist. */
export async function practiceKnown(reach: RecordsReach, code: string): Promise<boolean> {
  return (await zonesOfPractices(reach)).has(code);
}
