import { setTimeout as sleep } from "node:timers/promises";
import { disconnect } from "@/lib/store/database";
import type { Ground, Outcome } from "./ground";
import { soundness } from "./sound";
import { recordSections } from "./state";

/** Two processes that bring in the same files at the same time: every row is accepted once and repeated once. */
export async function twiceAtOnce(on: Ground, points: number): Promise<Outcome> {
  const { reference, took } = await on.after("import");
  const troubles: string[] = [];
  const apart = ["imports", "witnesses"];
  const sections = recordSections.filter((section) => !apart.includes(section));
  for (const point of on.here(points)) {
    const database = await on.server.database(on.base.database.name);
    const both = [await on.workers.take(), await on.workers.take()];
    for (const [place, one] of both.entries()) {
      if (place > 0) await sleep(point * on.random() * 0.2 * took);
      one.go({ name: "import", stage: on.base.stage, url: database.url });
    }
    for (const one of both) {
      const { acknowledged, failed } = await one.ended;
      if (!acknowledged) troubles.push(`an import failed beside another: ${failed}`);
    }
    troubles.push(...(await soundness(database.url, [reference], { sections })).troubles);
    await disconnect();
    await database.drop();
  }
  const came = on.here(points).map(() => "each row once");
  return { what: "two imports of the same files at once", points: came.length, came, troubles };
}
