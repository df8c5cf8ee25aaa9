import { setTimeout as sleep } from "node:timers/promises";
import { disconnect } from "@/lib/store/database";
import { migrate } from "@/lib/store/home/migrate";
import { firstRelease, firstSections, schemaOf } from "./first-release";
import type { Ground, Outcome } from "./ground";
import { asked, leftAlone } from "./own-server";
import { soundness } from "./sound";

/**
 * The upgrade from the first release's database killed at random moments, its process and PostgreSQL in turn: each migration is there
 * whole or not at all, and the next start goes on to the same schema, rows and figures.
 */
export async function stoppedMigrations(on: Ground, points: number): Promise<Outcome> {
  const came: string[] = [];
  const troubles: string[] = [];
  const first = await firstRelease(on);
  const whole = await schemaOf(on.base.database.url);
  let took = 2000;
  for (const point of on.here(points)) {
    const database = await on.server.database(first.name);
    const one = await on.workers.take();
    one.go({ name: "migrate", stage: null, url: database.url });
    await sleep(on.random() * took);
    if (point % 2 === 0) one.kill();
    else await on.server.kill();
    const ended = await one.ended;
    if (ended.acknowledged) took = ended.took;
    await on.server.up();
    await leftAlone(database.url);
    const done = await asked(
      database.url,
      "select count(*)::int as done from _prisma_migrations where finished_at is not null",
    );
    const more = await migrate(database.url);
    came.push(ended.acknowledged ? "answered" : `after ${done[0]?.done}, ${more.length} more`);
    if (ended.acknowledged && more.length > 0) troubles.push("an acknowledged migration is lost");
    if ((await schemaOf(database.url)) !== whole) troubles.push("the schema is another afterwards");
    const how = { sections: firstSections };
    troubles.push(...(await soundness(database.url, [on.base.before], how)).troubles);
    await disconnect();
    await database.drop();
  }
  await first.drop();
  return { what: "a migration stopped half way", points: came.length, came, troubles };
}
