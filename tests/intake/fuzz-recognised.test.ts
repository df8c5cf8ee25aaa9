import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Mapping, mappingSchema } from "@/lib/intake/mapping/mapping";
import { readMapped } from "@/lib/intake/mapping/read-mapped";
import { propose } from "@/lib/intake/propose/propose";
import { recognise } from "@/lib/intake/recognise/recognise";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import { seededRandom } from "@/lib/statistics/seeded-random";
import { fuzzJson, fuzzSeparated, fuzzWorkbook, pick, type Random } from "./fuzz-files";
import { canalOfEach } from "./read-both-ways";
import { context } from "./read-text";

// Properties, which need no expected value: a file of which nothing is known, and what is proposed for it, crash nothing, and no
// row that was counted is lost.

const seed = Number(process.env.CANAL_AUDIT_SEED ?? 20_261_126);
const cases = 1500;

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "canal-audit-fuzz-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test(`no crash and no lost row in ${cases} files, seed ${seed}`, async () => {
  const random = seededRandom(seed);
  const path = join(folder, "file.csv");
  let read = 0;
  let refused = 0;
  for (let one = 0; one < cases; one += 1) {
    await writeFile(path, bytesOf(random));
    try {
      const found = await recognise(path, "file.csv");
      const { mapping } = propose(found, "file.csv");
      await rowsRead(path, mappingSchema.parse(mapping));
      const first = found.columns[0]?.name ?? "";
      const rows = await rowsRead(path, canalOfEach(found.layout, first));
      expect(rows, `case ${one}`).toBe(found.rows);
      read += rows;
    } catch (trouble) {
      if (!(trouble instanceof UnreadableFile)) throw trouble;
      refused += 1;
    }
  }
  expect(read).toBeGreaterThan(cases);
  expect(refused).toBeLessThan(cases / 2);
}, 120_000);

async function rowsRead(path: string, mapping: Mapping): Promise<number> {
  let rows = 0;
  for await (const sheet of readMapped(path, "file.csv", mapping, context))
    for await (const row of sheet.rows)
      rows += row.verdict === "good" || row.reasons.length > 0 ? 1 : 0;
  return rows;
}

/** A file of any kind, sometimes cut off, sometimes bytes of no meaning. */
function bytesOf(random: Random): Buffer {
  if (random() < 0.05)
    return Buffer.from(Array.from({ length: 300 }, () => Math.floor(random() * 256)));
  const { bytes } = pick(random, [fuzzSeparated, fuzzSeparated, fuzzJson, fuzzWorkbook])(random);
  return random() < 0.1 ? bytes.subarray(0, Math.floor(random() * bytes.length)) : bytes;
}
