import { randomBytes } from "node:crypto";
import { readFile, rename, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { RecordsReach } from "@/lib/access/reach";
import { Prisma } from "@/prisma/client/client";
import { prisma } from "./database";
import { homeFolder } from "./home/home-folder";

/** A file brought in that nothing kept knows how to read. */
export type WaitingFile = {
  readonly id: number;
  readonly name: string;
  /** Where it lies, below the home. */
  readonly kept: string;
  readonly bytes: bigint;
  /** lib/intake/recognise; null until it was looked through. */
  readonly recognised: unknown;
  /** Why it cannot be read at all, in a sentence. */
  readonly trouble: string | null;
  /** The mapping as far as it is made. */
  readonly draft: unknown;
  /** How far the test of a draft on the whole file is (lib/reports/mapping-test); null where none was begun. */
  readonly test: unknown;
  readonly zone: string;
  readonly by: string;
  readonly at: Date;
};

/** The files that wait, oldest first: whoever keeps one practice alone sees those they brought themselves. */
export async function waitingFiles(reach: RecordsReach): Promise<WaitingFile[]> {
  const rows = await prisma().waitingFile.findMany({
    where: within(reach),
    orderBy: { id: "asc" },
  });
  return Promise.all(rows.map(withBeside));
}

/** One of them, or null where there is none within the reach. */
export async function waitingFile(reach: RecordsReach, id: number): Promise<WaitingFile | null> {
  const row = await prisma().waitingFile.findFirst({ where: { ...within(reach), id } });
  return row && withBeside(row);
}

/** @param file its path below the home, which must be there already */
export async function addWaiting(
  reach: RecordsReach,
  file: { name: string; kept: string; bytes: number; zone: string },
): Promise<number> {
  const made = await prisma().waitingFile.create({ data: { ...file, by: reach.by } });
  return made.id;
}

export function pathOfWaiting(file: Pick<WaitingFile, "kept">): string {
  return join(homeFolder(), file.kept);
}

/**
 * Keeps what was understood of the file, or why nothing could be. Cells of its first rows and words of its columns are in that, patients'
 * references among them: it lies beside the file and goes with it, and the database is only told that it is there.
 */
export async function saveRecognised(
  reach: RecordsReach,
  id: number,
  found: { recognised: unknown } | { trouble: string },
): Promise<void> {
  if ("recognised" in found) {
    const file = await prisma().waitingFile.findFirst({ where: { ...within(reach), id } });
    if (!file) return;
    await keepBeside(besideWaiting(file), found.recognised);
  }
  const data =
    "trouble" in found
      ? { trouble: found.trouble, recognised: Prisma.DbNull }
      : { trouble: null, recognised: { beside: true } };
  await prisma().waitingFile.updateMany({ where: { ...within(reach), id }, data });
}

export async function saveDraft(reach: RecordsReach, id: number, draft: unknown): Promise<void> {
  await prisma().waitingFile.updateMany({
    where: { ...within(reach), id },
    data: { draft: asJson(draft) },
  });
}

/** Forgets the file's entry and deletes it with what lies beside. Answers what was there. */
export async function dropWaiting(reach: RecordsReach, id: number): Promise<WaitingFile | null> {
  const found = await waitingFile(reach, id);
  if (found) {
    // First what holds references: a row without its file says so, a file without its row would lie there unseen.
    for (const path of [besideWaiting(found), testOfWaiting(found), pathOfWaiting(found)])
      await rm(path, { force: true });
    await prisma().waitingFile.deleteMany({ where: { id } });
  }
  return found;
}

function besideWaiting(file: Pick<WaitingFile, "kept">): string {
  return `${pathOfWaiting(file)}.seen.json`;
}

function testOfWaiting(file: Pick<WaitingFile, "kept">): string {
  return `${pathOfWaiting(file)}.test.json`;
}

/** Keeps how far a test of the file is: its examples are cells, so that it lies beside the file, where every process finds it. */
export async function saveTest(file: Pick<WaitingFile, "kept">, test: unknown): Promise<void> {
  await keepBeside(testOfWaiting(file), test);
}

/** How far the test of the file is now. */
export async function testOfFile(file: Pick<WaitingFile, "kept">): Promise<unknown> {
  return besideOr(testOfWaiting(file));
}

/** With what lies beside; where that is gone, the file is looked through again. */
async function withBeside<Row extends Pick<WaitingFile, "kept" | "recognised">>(row: Row) {
  const recognised = row.recognised === null ? null : await besideOr(besideWaiting(row));
  return { ...row, recognised, test: await testOfFile(row) };
}

async function keepBeside(file: string, what: unknown): Promise<void> {
  const draft = `${file}.${randomBytes(4).toString("hex")}.new`;
  await writeFile(draft, JSON.stringify(what), { mode: 0o600 });
  await rename(draft, file);
}

async function besideOr(file: string): Promise<unknown> {
  const text = await readFile(file, "utf8").catch(() => null);
  return text === null ? null : (JSON.parse(text) as unknown);
}

const within = (reach: RecordsReach) => (reach.practices === null ? {} : { by: reach.by });

/** PostgreSQL's jsonb takes no NUL. */
function asJson(value: unknown): Prisma.InputJsonValue {
  return JSON.parse(JSON.stringify(value).replaceAll("\\u0000", "\\ufffd"));
}
