import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { seededRandom } from "@/lib/statistics/seeded-random";
import { disconnect } from "@/lib/store/database";
import { type ActName, act } from "./acts";
import { type Base, makeBase } from "./base";
import { type OwnServer, ownServer } from "./own-server";
import { type Reference, referenceOf, soundness } from "./sound";
import { type Ended, type ReadyWorkers, readyWorkers, type Worker } from "./worker";

/** One line of what was tried: how many points, what came of each, what was wrong. */
export type Outcome = {
  readonly what: string;
  readonly points: number;
  readonly came: readonly string[];
  readonly troubles: readonly string[];
};

/** Where faults are tried: a server of its own, a base, and for every act what it comes to undisturbed. */
export type Ground = {
  readonly server: OwnServer;
  readonly base: Base;
  readonly workers: ReadyWorkers;
  readonly random: () => number;
  /** Which of so many points are tried here: the others are another part's. */
  here(points: number): number[];
  after(name: ActName): Promise<{ readonly reference: Reference; readonly took: number }>;
  close(): Promise<void>;
};

/** One of several parts that are tried at the same time, each on a ground of its own. */
export type Part = { readonly part: number; readonly of: number };

export async function ground(
  visits: number,
  seed: number,
  { part, of }: Part = { part: 0, of: 1 },
): Promise<Ground> {
  const folder = await mkdtemp(join(tmpdir(), "canal-audit-faults-"));
  const workers = readyWorkers();
  const server = await ownServer(join(folder, "home"));
  const base = await makeBase(server, visits);
  const known = new Map<ActName, { reference: Reference; took: number }>();
  return {
    ...{ server, base, workers, random: seededRandom(seed + 7919 * part) },
    here: (points) => [...Array(points).keys()].filter((point) => point % of === part),
    async after(name) {
      const found = known.get(name);
      if (found) return found;
      const database = await server.database(base.database.name);
      const one = await workers.take();
      one.go({ name, stage: base.stage, url: database.url });
      const { acknowledged, failed, took } = await one.ended;
      if (!acknowledged) throw new Error(`${name} fails undisturbed: ${failed}`);
      const made = { reference: await referenceOf(database.url, "after"), took };
      known.set(name, made);
      await away(database);
      return made;
    },
    async close() {
      await workers.end();
      await server.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

/**
 * Does an act on a copy of the base while `disturb` does its worst, then checks; where it did not come to be, it is done again and
 * must come to what it comes to undisturbed.
 *
 * @returns in a word what it was found to be, and what is wrong
 */
export async function tried(
  on: Ground,
  name: ActName,
  disturb: (
    one: Worker,
    place: { readonly url: string; readonly database: string; readonly took: number },
  ) => Promise<Ended>,
): Promise<{ readonly came: string; readonly troubles: string[] }> {
  const { reference, took } = await on.after(name);
  const database = await on.server.database(on.base.database.name);
  const one = await on.workers.take();
  const ended = await disturb(one, { url: database.url, database: database.name, took });
  await on.server.up();
  const allowed = ended.acknowledged ? [reference] : [on.base.before, reference];
  const found = await soundness(database.url, allowed);
  const troubles = found.troubles.map((trouble) => `${name}: ${trouble}`);
  if (found.is === "before") {
    await disconnect();
    process.env.DATABASE_URL = database.url;
    await act(name, on.base.stage).catch((trouble: unknown) => {
      troubles.push(`${name}, done again, fails: ${trouble}`);
    });
    const again = await soundness(database.url, [reference], { figures: false });
    troubles.push(...again.troubles.map((trouble) => `${name}, done again: ${trouble}`));
  }
  await away(database);
  return { came: ended.acknowledged ? "answered" : (found.is ?? "neither"), troubles };
}

async function away(database: { drop(): Promise<void> }): Promise<void> {
  await disconnect().catch(() => undefined);
  await database.drop();
}

/** "3 before, 2 after" */
export function counted(words: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const word of [...words].sort()) counts.set(word, (counts.get(word) ?? 0) + 1);
  return [...counts].map(([word, count]) => `${count} ${word}`).join(", ");
}
