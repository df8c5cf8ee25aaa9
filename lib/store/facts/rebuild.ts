import type { RecordsReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { changing } from "../import/changing";
import { renewFacts } from "./renew-facts";

/** Derives the facts of every visit anew from its records, and so forgets what was kept of months. Answers how many visits. */
export async function rebuildFacts(reach: RecordsReach): Promise<number> {
  if (reach.practices !== null) throw new Refused("Facts are rebuilt for the whole group.");
  return changing(async (client) => {
    const { rowCount } = await client.query("insert into touched select id from sessions");
    await renewFacts(client);
    return rowCount ?? 0;
  });
}
