import type { RecordsReach } from "@/lib/access/reach";
import { changing } from "../import/changing";
import { publish } from "../import/publish";
import { takeIn } from "./take-in";

/**
 * Takes the versions that the held rows bear in place of the accepted ones, under the viewer's name. What was held because
 * of the old versions is judged anew.
 *
 * @returns how many were taken; a row settled meanwhile, out of reach, against the format's rules together with what it
 * does not say, or one of two versions of the same row is not among them
 */
export async function takeNewer(reach: RecordsReach, ids: readonly string[]): Promise<number> {
  return changing(async (client) => {
    const taken = await takeIn(client, ids, {
      by: reach.by,
      rule: "asked",
      practices: reach.practices,
    });
    if (taken.length > 0) await publish(client, { zone: "UTC", practices: null, afterUndo: true });
    return taken.length;
  });
}
