import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { FileLayout } from "@/lib/intake/mapping/file-layout";
import type { Mapping } from "@/lib/intake/mapping/mapping";
import { readMapped } from "@/lib/intake/mapping/read-mapped";
import { openFile } from "@/lib/intake/recognise/open-file";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import { seededRandom } from "@/lib/statistics/seeded-random";
import {
  type FuzzFile,
  fuzzCells,
  fuzzJson,
  fuzzLayout,
  fuzzSeparated,
  fuzzWorkbook,
  pick,
  type Random,
  upTo,
} from "./fuzz-files";
import { fuzzMapping } from "./fuzz-mappings";
import { context } from "./read-text";

// Properties, which need no expected value but counts of rows computed from the rows written: no file crashes its reading
// under any layout and mapping, and no row is lost.

const seed = Number(process.env.CANAL_AUDIT_SEED ?? 20_261_127);

const readers: [string, (random: Random) => FuzzFile, number, number][] = [
  ["separated text", fuzzSeparated, 3500, 2000],
  ["JSON", fuzzJson, 1000, 1000],
  ["workbook", fuzzWorkbook, 1000, 1000],
];

let path = "";
let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "canal-audit-fuzz-"));
  path = join(folder, "file");
});
afterAll(() => rm(folder, { recursive: true, force: true }));

test.each(readers)(
  `%s: under no layout a row is lost, seed ${seed}`,
  async (_, make, layouts) => {
    const random = seededRandom(seed);
    let whole = 0;
    for (let one = 0; one < layouts; one += 1) {
      const file = make(random);
      await writeFile(path, file.bytes);
      expect(await rowsUnder(file.layout), told(one, file)).toBe(file.rows);
      whole += file.rows;
      // Under another layout than its own it is cut otherwise, or refused.
      await rowsUnder(fuzzLayout(random)).catch(refusedOnly);
    }
    expect(whole).toBeGreaterThan(layouts);
  },
  120_000,
);

test.each(readers)(
  `%s: under no mapping a row is lost, seed ${seed}`,
  async (_, make, __, mappings) => {
    const random = seededRandom(seed + 1);
    let rows = 0;
    for (let one = 0; one < mappings; one += 1) {
      const file = make(random);
      await writeFile(path, file.bytes);
      const sheet = await openFile(path, "file", file.layout);
      const header = [...(sheet?.header ?? [])];
      await sheet?.close();
      const column = pick(random, header);
      const is = Array.from({ length: upTo(random, 4) }, () => pick(random, fuzzCells));
      const mapping = fuzzMapping(random, file.layout, header);
      const [feed] = mapping.tables;
      if (!feed) throw new Error("a mapping has a table");
      // Of a required field that is not recorded no row is made; without such words each row is one.
      const plain = JSON.parse(JSON.stringify(feed).replaceAll('"means":null', '"means":"x"'));
      const under = (only: typeof feed.only) =>
        rowsMapped({ ...mapping, tables: [{ ...plain, only }] });
      // A row is of the table where the condition holds, and else where its opposite does; a line that cannot be cut is told in both.
      const both = (await under([{ column, is }])) + (await under([{ column, not: is }]));
      expect(both, told(one, file)).toBe(file.rows + file.ragged);
      expect(await rowsMapped(mapping), told(one, file)).toBeLessThanOrEqual(file.rows);
      rows += both;
    }
    expect(rows).toBeGreaterThan(mappings);
  },
  120_000,
);

function told(one: number, { bytes, layout }: FuzzFile): string {
  return `case ${one}: ${JSON.stringify(bytes.toString("latin1"))} ${JSON.stringify(layout)}`;
}

async function rowsUnder(layout: FileLayout): Promise<number> {
  const sheet = await openFile(path, "file", layout);
  let rows = 0;
  for await (const { cells, line } of sheet?.rows ?? []) {
    rows += line > 0 ? 1 : 0;
    for (const text of Object.values(cells)) expect(typeof text).toBe("string");
  }
  return rows;
}

/** Rows told as good, or as held with a reason. */
async function rowsMapped(mapping: Mapping): Promise<number> {
  let rows = 0;
  for await (const sheet of readMapped(path, "file", mapping, context))
    for await (const row of sheet.rows)
      rows += row.verdict === "good" || row.reasons.every(({ sentence }) => sentence) ? 1 : 0;
  return rows;
}

function refusedOnly(trouble: unknown): void {
  if (!(trouble instanceof UnreadableFile)) throw trouble;
}
