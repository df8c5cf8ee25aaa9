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
  return Promise.all(rows.map(withRecognised));
}

/** One of them, or null where there is none within the reach. */
export async function waitingFile(reach: RecordsReach, id: number): Promise<WaitingFile | null> {
  const row = await prisma().waitingFile.findFirst({ where: { ...within(reach), id } });
  return row && withRecognised(row);
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
    const beside = besideWaiting(file);
    await writeFile(`${beside}.new`, JSON.stringify(found.recognised), { mode: 0o600 });
    await rename(`${beside}.new`, beside);
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
    for (const path of [besideWaiting(found), pathOfWaiting(found)])
      await rm(path, { force: true });
    await prisma().waitingFile.deleteMany({ where: { id } });
  }
  return found;
}

function besideWaiting(file: Pick<WaitingFile, "kept">): string {
  return `${pathOfWaiting(file)}.seen.json`;
}

/** With what lies beside; where that is gone, the file is looked through again. */
async function withRecognised<Row extends Pick<WaitingFile, "kept" | "recognised">>(row: Row) {
  if (row.recognised === null) return row;
  const text = await readFile(besideWaiting(row), "utf8").catch(() => null);
  return { ...row, recognised: text === null ? null : (JSON.parse(text) as unknown) };
}

const within = (reach: RecordsReach) => (reach.practices === null ? {} : { by: reach.by });

/** PostgreSQL's jsonb takes no NUL. */
function asJson(value: unknown): Prisma.InputJsonValue {
  return JSON.parse(JSON.stringify(value).replaceAll("\\u0000", "\\ufffd"));
}
