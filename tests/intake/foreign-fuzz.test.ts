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
import { context } from "./read-text";

// Properties, which need no expected value: no file of another system crashes its reading, and no row is lost.

const seed = Number(process.env.CANAL_AUDIT_SEED ?? 20_261_126);
const cases = 2000;

const names = [
  ...[
    "Visit",
    "Vorgang",
    "Canal",
    "Kanal",
    "Patient",
    "Tooth",
    "Start",
    "Datum",
    "Uhrzeit",
    "Lösung",
  ],
  ...[
    "Menge (ml)",
    "Dauer (min:s)",
    "Abgabe",
    "Dam",
    "Reset",
    "Files used",
    "Separated",
    "Operator",
  ],
  ...["Room", "Site", "Type", "Status", "", "Visit", " x\ty", '"q"', "WL", "Technique", "By"],
];
const cells = [
  ...[
    "",
    "x",
    "-",
    "?",
    "n/p",
    "V-1",
    "MB",
    "36",
    "UR6",
    "1",
    "3,5",
    "1.234",
    "1.234,5",
    "0:45",
    "PT2M",
  ],
  ...[
    "07/01/2026 08:50 AM",
    "01.07.2026",
    "08:50",
    "Hypochlorit 3,0 %",
    "Spritze",
    "RCT",
    "Completed",
  ],
  ...[
    "rotary",
    "'",
    'a"b',
    '"open',
    "\r",
    "\u202f1 000",
    "é",
    "\ufffd",
    "😀",
    "=1+1",
    "1e309",
    "-0",
  ],
  ...["99999999999999999999", "00/00/0000", "31.02.2026", "a".repeat(5000)],
];
const json = [
  "[",
  "{",
  "[{",
  '[{"a":1},',
  '{"a":1}\n{"a":',
  '[{"Visit":"V"}]',
  "{}\n{}",
  "[1,2]",
  "[[]]",
];

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
    await writeFile(path, fileOf(random));
    try {
      const found = await recognise(path, "file.csv");
      const { mapping } = propose(found, "file.csv");
      await rowsRead(path, mappingSchema.parse(mapping));
      const first = found.columns[0]?.name ?? "";
      const rows = await rowsRead(path, oneOfEach(mapping, first));
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

/** A mapping that makes one row of each row of the file. */
function oneOfEach(mapping: Mapping, column: string): Mapping {
  const fields = {
    session_id: { columns: [column] },
    canal: { always: "MB" },
    preparation: { always: "hand" },
  };
  return { ...mapping, tables: [{ table: "canals", fields }] };
}

async function rowsRead(path: string, mapping: Mapping): Promise<number> {
  let rows = 0;
  for await (const sheet of readMapped(path, "file.csv", mapping, context))
    for await (const row of sheet.rows)
      rows += row.verdict === "good" || row.reasons.length > 0 ? 1 : 0;
  return rows;
}

/** Separated text, sometimes cut off, sometimes JSON, sometimes bytes of no meaning. */
function fileOf(random: () => number): Buffer {
  const pick = <Item>(items: readonly Item[]) => items[Math.floor(random() * items.length)] as Item;
  const kind = random();
  if (kind < 0.05) return Buffer.from(pick(json));
  if (kind < 0.1) return Buffer.from(Array.from({ length: 300 }, () => Math.floor(random() * 256)));
  const separator = pick([",", ";", "\t", "|"]);
  const width = 1 + Math.floor(random() * 12);
  const line = (from: readonly string[], length: number) =>
    Array.from({ length }, () => pick(from)).join(separator);
  const lines = random() < 0.2 ? ["Title block"] : [];
  lines.push(line(names, width));
  for (let row = 1 + Math.floor(random() * 12); row > 0; row -= 1)
    lines.push(line(cells, random() < 0.9 ? width : 1 + Math.floor(random() * 14)));
  const text = lines.join(pick(["\n", "\r\n", "\r"])) + pick(["\n", ""]);
  const bytes = Buffer.from(text, pick(["utf8", "utf16le", "latin1"] as const));
  return random() < 0.1 ? bytes.subarray(0, Math.floor(random() * bytes.length)) : bytes;
}
