import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { encodings, type FileLayout } from "@/lib/intake/mapping/file-layout";
import { type Mapping, mappingSchema } from "@/lib/intake/mapping/mapping";
import { readMapped } from "@/lib/intake/mapping/read-mapped";
import { sourceUnits } from "@/lib/intake/mapping/source-units";
import { openFile } from "@/lib/intake/recognise/open-file";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import { tableNames, tables } from "@/lib/records/tables";
import { seededRandom } from "@/lib/statistics/seeded-random";
import { context } from "./read-text";

// Properties, which need no expected value but counts of rows computed from the rows written: no file crashes its reading
// under any layout and mapping, and no row is lost.

const seed = Number(process.env.CANAL_AUDIT_SEED ?? 20_261_127);
const layouts = 5000;
const mappings = 3000;

const cells = [
  ...["", "x", "-", "V-1", "MB", "36", "UR6", "1", "3,5", "1.234,5", "0:45", "PT2M", "NORTH", "é€"],
  ...[
    "07/01/2026 08:50 AM",
    "01.07.2026",
    "08:50",
    "2026-03-29T01:30:00",
    "1751360000",
    "31.02.2026",
  ],
  ...[
    "Hypochlorit 3,0 %",
    "naocl",
    "rotary",
    "yes",
    "'",
    'a"b',
    "\ufffd",
    "😀",
    "1e309",
    "\u202f1 000",
  ],
];
const names = [
  "Visit",
  "Canal",
  "Visit",
  "",
  "Größe",
  "constructor",
  "__proto__",
  "Datum",
  " a  b ",
];

let path = "";
let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "canal-audit-fuzz-"));
  path = join(folder, "file");
});
afterAll(() => rm(folder, { recursive: true, force: true }));

type Random = () => number;
const pick = <Item>(random: Random, items: readonly Item[]) =>
  items[Math.floor(random() * items.length)] as Item;
const upTo = (random: Random, most: number) => Math.floor(random() * (most + 1));

test(`under ${layouts} layouts no row is lost, seed ${seed}`, async () => {
  const random = seededRandom(seed);
  let whole = 0;
  for (let one = 0; one < layouts; one += 1) {
    const { bytes, layout, rows } = fileOf(random);
    await writeFile(path, bytes);
    expect(
      await rowsUnder(layout),
      `case ${one}: ${JSON.stringify(bytes.toString("latin1"))} ${JSON.stringify(layout)}`,
    ).toBe(rows);
    whole += rows;
    // Under another layout than its own it is cut otherwise, or refused.
    await rowsUnder(layoutOf(random)).catch(refusedOnly);
  }
  expect(whole).toBeGreaterThan(layouts);
}, 120_000);

test(`under ${mappings} mappings no row is lost, seed ${seed}`, async () => {
  const random = seededRandom(seed + 1);
  let told = 0;
  for (let one = 0; one < mappings; one += 1) {
    const { bytes, layout, rows, ragged } = fileOf(random);
    await writeFile(path, bytes);
    const sheet = await openFile(path, "file", layout);
    const header = [...(sheet?.header ?? [])];
    await sheet?.close();
    const column = pick(random, header);
    const is = Array.from({ length: upTo(random, 4) }, () => pick(random, cells));
    const mapping = mappingOf(random, layout, header);
    const [feed] = mapping.tables;
    if (!feed) throw new Error("a mapping has a table");
    const under = (only: Mapping["tables"][number]["only"]) =>
      rowsMapped({ ...mapping, tables: [{ ...feed, only }] });
    // A row is of the table where the condition holds, and else where its opposite does; a line that cannot be cut is told in both.
    const both = (await under([{ column, is }])) + (await under([{ column, not: is }]));
    expect(both, `case ${one}`).toBe(rows + ragged);
    expect(await rowsMapped(mapping), `case ${one}`).toBeGreaterThanOrEqual(rows);
    told += both;
  }
  expect(told).toBeGreaterThan(mappings);
}, 120_000);

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

function layoutOf(random: Random): FileLayout {
  return {
    kind: pick(random, ["separated", "separated", "separated", "json", "json-lines", "workbook"]),
    encoding: pick(random, encodings),
    separator: pick(random, [",", ";", "\t", "|", "a", "."]),
    quote: pick(random, ['"', "'", ""]),
    headerLine: 1 + upTo(random, 4),
    decimal: pick(random, [".", ","]),
    thousands: pick(random, ["", ".", ",", " ", "'"]),
  };
}

/** Separated text as its layout says, quoted where that has quotes, with how many rows stand below its header. */
function fileOf(random: Random) {
  const separator = pick(random, [",", ";", "\t", "|"]);
  const layout: FileLayout = { ...layoutOf(random), kind: "separated", separator };
  const letters = layout.encoding === "windows-1252" ? /[^\x20-\x7e\xdf-\xff]/g : /(?!)/g;
  const width = 1 + upTo(random, 8);
  let ragged = 0;
  let rows = 0;
  const written = (text: string) => {
    const plain = text.replace(letters, ".");
    if (layout.quote === "") return plain.replaceAll(separator, " ");
    const quoted = `${layout.quote}${plain.replaceAll(layout.quote, layout.quote.repeat(2))}${layout.quote}`;
    return quoted.replace(".", random() < 0.02 ? "\n" : ".");
  };
  // A line of empty names is a blank one.
  const header = Array.from({ length: width }, (_, place) =>
    place === 0 ? "First" : pick(random, names),
  );
  const lines = Array.from({ length: layout.headerLine - 1 }, () => "Title");
  lines.push(header.map(written).join(separator));
  for (let row = upTo(random, 10); row > 0; row -= 1) {
    const length = random() < 0.9 ? width : 1 + upTo(random, 9);
    const texts = Array.from({ length }, () => pick(random, cells));
    if (texts.every((text) => text.trim() === "")) continue;
    const beyond = texts.slice(width).some((text) => text.trim() !== "");
    if (length < width || beyond) ragged += 1;
    rows += 1;
    lines.push(texts.map(written).join(separator));
    if (random() < 0.1) lines.push("");
  }
  const text = lines.join(pick(random, ["\n", "\r\n"])) + pick(random, ["\n", ""]);
  return { bytes: encoded(text, layout.encoding), layout, rows, ragged };
}

function encoded(text: string, encoding: FileLayout["encoding"]): Buffer {
  if (encoding === "windows-1252") return Buffer.from(text, "latin1");
  if (encoding === "utf-16be") return Buffer.from(text, "utf16le").swap16();
  return Buffer.from(text, encoding === "utf-8" ? "utf8" : "utf16le");
}

function mappingOf(random: Random, file: FileLayout, header: readonly string[]): Mapping {
  const table = pick(random, tableNames);
  const fields: Mapping["tables"][number]["fields"] = {};
  for (const { name } of tables[table].columns) {
    const kind = random();
    if (kind < 0.5) fields[name] = feedOf(random, header);
    else if (kind < 0.7) fields[name] = { always: pick(random, cells) || "x" };
    else if (kind < 0.8) fields[name] = { numbered: true };
  }
  if (random() < 0.3 && tables[table].parent) fields["visit.at"] = feedOf(random, header);
  const mapping = { format: "canal-audit-mapping-1", name: "random", file, columns: header };
  return mappingSchema.parse({
    ...mapping,
    tables: [{ table, minutes: upTo(random, 60), fields }],
  });
}

function feedOf(random: Random, header: readonly string[]) {
  const some = <Item>(items: readonly Item[]) => (random() < 0.4 ? pick(random, items) : undefined);
  const day = ["year-month-day", "day-month-year", "month-day-year", "unix-s", "unix-ms"] as const;
  const clock = some(day);
  const unit = some(sourceUnits);
  const word = pick(random, [...cells.slice(1), "Hypochlorit {number} %", "{number}"]);
  return {
    columns: [pick(random, header), ...(random() < 0.2 ? [pick(random, header)] : [])],
    ...(random() < 0.5
      ? { words: [{ word, means: pick(random, ["naocl", "{number}", "MB"]) }] }
      : {}),
    ...(unit ? { unit } : {}),
    ...(clock ? { clock: { day: clock, hours: pick(random, [24, 12] as const) } } : {}),
  };
}
