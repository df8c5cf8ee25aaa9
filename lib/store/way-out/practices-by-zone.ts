import type { RecordsReach } from "@/lib/access/reach";
import { practicesWithin } from "../records/practices";

/** The practices of a reach by time zone: local days of each are those of its zone. */
export async function practicesByZone(
  reach: RecordsReach,
  only?: string,
): Promise<Map<string, string[]>> {
  const zones = new Map<string, string[]>();
  for (const { code, zone } of await practicesWithin(reach))
    if (only === undefined || code === only) zones.set(zone, [...(zones.get(zone) ?? []), code]);
  return zones;
}
