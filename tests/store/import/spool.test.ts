import { mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { Spool } from "@/lib/store/import/spool";

// Expected values are the bytes that were put in; worked by hand.

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "canal-audit-spool-"));
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

const piece = (letter: string, length: number) => Buffer.from(letter.repeat(length));

test("gives back what was put in, in any order, and no file is seen meanwhile", async () => {
  const spool = new Spool(folder);
  const pieces = [piece("a", 10), piece("b", 100_000), piece("c", 1)];
  const put = await Promise.all(pieces.map((one) => spool.put(one)));
  expect(await readdir(folder)).toEqual([]);
  for (const at of [2, 0, 1]) {
    const spooled = put[at];
    if (!spooled) throw new Error("there is room");
    expect(await spool.take(spooled)).toEqual(pieces[at]);
  }
  // Nothing waits: the next one lies at the beginning again.
  expect(await spool.put(piece("d", 5))).toEqual({ at: 0, length: 5 });
  await spool.close();
});

test("takes no more than it may hold, and takes it once there is room", async () => {
  const spool = new Spool(folder, 10);
  const first = await spool.put(piece("a", 8));
  expect(await spool.put(piece("b", 3))).toBeNull();
  if (!first) throw new Error("there is room");
  await spool.take(first);
  expect(await spool.put(piece("b", 3))).toEqual({ at: 0, length: 3 });
  await spool.close();
});

test("takes nothing where no file can be made", async () => {
  const spool = new Spool(join(folder, "not", "there"));
  expect(await spool.put(piece("a", 1))).toBeNull();
  await spool.close();
});
