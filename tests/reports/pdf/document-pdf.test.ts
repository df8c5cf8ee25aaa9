import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { documentPdf } from "@/lib/reports/pdf/document-pdf";
import { projectFolder } from "@/lib/store/home/project-folder";
import type { DocumentBlock, ReportDocument } from "@/lib/views/document/document";
import { madeIntervals, madeReport, madeTable } from "./made-report";
import { type ReadPage, readPdf } from "./read-pdf";

/*
 * Expected values: the project's own rules of what a printed report holds, and the words of the made document; what is
 * in the PDF is read back by a library that had no part in writing it.
 */

const at = new Date("2026-10-05T08:00:00Z");
const report = madeReport();
let bytes: Uint8Array;
let read: Awaited<ReturnType<typeof readPdf>>;

beforeAll(async () => {
  bytes = await documentPdf(report, at);
  read = await readPdf(bytes);
});

test("it says its title, its language and when it was made", () => {
  expect(read.info).toMatchObject({
    Title: report.title,
    Subject: report.over,
    Language: "en-GB",
    CreationDate: "D:20261005080000Z",
    ModDate: "D:20261005080000Z",
  });
});

test("the summary and each part have a bookmark on the page where they begin", () => {
  expect(read.outline.map(({ title }) => title)).toEqual([
    "Summary",
    ...report.parts.map(({ title }) => title),
  ]);
  expect(read.outline[0]?.page).toBe(1);
  for (const { title, page } of read.outline.slice(1)) {
    expect(read.pages[page - 1]?.texts.map(({ words }) => words)).toContain(title);
  }
});

test("every page has its number, the foot, and what report it is of", () => {
  const { pages } = read;
  expect(pages.length).toBeGreaterThan(5);
  pages.forEach((page, place) => {
    const words = page.texts.map((text) => text.words);
    expect(words).toContain(`${place + 1} of ${pages.length}`);
    expect(words).toContain(report.foot);
    expect(words).toContain(report.title);
    expect(words).toContain(report.over);
  });
});

test("sheets are A4, on their side for wide parts alone", () => {
  const [short, long] = [595.28, 841.89];
  const wide = read.outline.find(({ title }) => title === "Adherence to the protocol")?.page ?? 0;
  const next = read.outline.find(({ title }) => title === "Separated instruments")?.page ?? 0;
  read.pages.forEach((page, place) => {
    const lies = place + 1 >= wide && place + 1 < next;
    expect(page.width).toBeCloseTo(lies ? long : short, 1);
    expect(page.height).toBeCloseTo(lies ? short : long, 1);
  });
});

test("every word of the document is there, and nothing is written over the edge of a sheet", () => {
  const all = squeezed(read.pages.flatMap(({ texts }) => texts.map(({ words }) => words)).join(""));
  const missing = everyText(report).filter((words) => !all.includes(squeezed(words)));
  expect(missing).toEqual([]);
  for (const page of read.pages) {
    for (const { left, right, base } of page.texts) {
      expect(left).toBeGreaterThan(45);
      expect(right).toBeLessThan(page.width - 45);
      expect(base).toBeLessThan(page.height - 15);
    }
  }
});

test("no two texts stand over each other", () => {
  for (const page of read.pages) {
    const over = page.texts.filter((one, place) =>
      page.texts
        .slice(place + 1)
        .some(
          (other) =>
            Math.abs(one.base - other.base) < 6 &&
            one.left < other.right - 0.5 &&
            other.left < one.right - 0.5,
        ),
    );
    expect(over).toEqual([]);
  }
});

test("the head of a table stands above its rows on each of its pages, and no row is divided", () => {
  const pages = read.pages.filter((page) => page.texts.some(({ words }) => /^V-2026-/.test(words)));
  expect(pages.length).toBeGreaterThanOrEqual(4);
  for (const page of pages) {
    const rows = page.texts.filter(({ words }) => /^V-2026-/.test(words));
    const head = page.texts.find(({ words }) => words === "What was written down");
    expect(head?.base).toBeLessThan(rows[0]?.base ?? 0);
    expect(rows.length).toBeGreaterThan(1);
    // The long cell has its beginning and its end on the same page.
    const count = (words: RegExp) => page.texts.filter((text) => words.test(text.words)).length;
    expect(count(/^sodium-hypochlorite/)).toBe(count(/throughout$/));
    expect(count(/^rinsed after/)).toBe(count(/explained$/));
  }
});

test("a heading stands on the page of what it heads", () => {
  const found = read.pages.filter((page) => has(page, "A heading near the end"));
  expect(found).toHaveLength(1);
  expect(found.every((page) => has(page, "A short table") && has(page, "V-2026-1000"))).toBe(true);
});

test("charts are lines and letters, never pictures", () => {
  for (const { drawings } of read.pages) {
    expect([...drawings.keys()].filter((name) => /image/i.test(name))).toEqual([]);
  }
  const page = read.pages[(read.outline[1]?.page ?? 0) - 1];
  expect(page?.drawings.get("constructPath")).toBeGreaterThan(60);
  for (const words of [
    "target 80 %",
    "practice 57 %",
    "look first",
    "too few canals (3)",
    "Jan 2025",
  ]) {
    expect(page && has(page, words)).toBe(true);
  }
});

test("a row of a chart is as high as its label and counts", () => {
  const page = read.pages[0];
  const row = (words: string) => page?.texts.find((text) => text.words === words)?.base;
  expect(row("K2 Riverside")).toBeCloseTo(row("17 of 29") ?? 0, 3);
  expect(row("K8 Riverside")).toBeCloseTo(row("59 of 83") ?? 0, 3);
});

test("the same document and time give the same bytes, here, at once and in another process", async () => {
  const [again, beside] = await Promise.all([documentPdf(report, at), documentPdf(report, at)]);
  const hash = (of: Uint8Array) => createHash("sha256").update(of).digest("hex");
  expect([hash(again), hash(beside)]).toEqual([hash(bytes), hash(bytes)]);
  const elsewhere = execFileSync(
    process.execPath,
    [
      join(projectFolder, "node_modules/tsx/dist/cli.mjs"),
      ...["--tsconfig", join(projectFolder, "lib/command/tsconfig.json")],
      join(projectFolder, "tests/reports/pdf/print-hash.ts"),
      at.toISOString(),
    ],
    { encoding: "utf8", cwd: projectFolder },
  );
  expect(elsewhere.trim()).toBe(hash(bytes));
  expect(hash(await documentPdf(report, new Date(at.getTime() + 1000)))).not.toBe(hash(bytes));
});

test("what is too much for a page goes on upon the next, and what is nothing takes no page", async () => {
  const long = "word ".repeat(900).trim();
  const table = madeTable("Tall", 2);
  const [first, second] = table.rows;
  if (!first || !second) throw new Error("The made table has two rows");
  const blocks: DocumentBlock[] = [
    { kind: "intervals", chart: madeIntervals(60) },
    { ...table, rows: [first, { ...second, cells: [...second.cells.slice(0, 6), long] }] },
    { kind: "list", items: [long] },
    { kind: "table", label: "", columns: [], rows: [] },
    { kind: "list", items: [] },
    { kind: "facts", facts: [] },
  ];
  const parts = [{ id: "much", title: "Much", blocks, wide: true }];
  const { pages } = await readPdf(await documentPdf({ ...report, summary: [], parts }, at));
  const texts = pages.flatMap((page) => page.texts.map(({ words }) => words));
  const words = texts
    .join(" ")
    .split(" ")
    .filter((word) => word === "word");
  expect(words).toHaveLength(1800);
  expect(texts).toContain("K59 Riverside");
  for (const page of pages) {
    for (const text of page.texts) expect(text.base).toBeLessThan(page.height - 15);
  }
});

test("a sign that the font lacks is an empty square", async () => {
  const said: DocumentBlock[] = [{ kind: "words", words: "漢 and 5\u202fmL and 9 mm" }];
  const { pages } = await readPdf(await documentPdf({ ...report, summary: said, parts: [] }, at));
  expect(pages).toHaveLength(1);
  expect(pages[0] && has(pages[0], "□ and 5 mL and 9 mm")).toBe(true);
});

function has(page: ReadPage, words: string): boolean {
  return page.texts.some((text) => text.words.replaceAll("\u00a0", " ") === words);
}

function squeezed(words: string): string {
  return words.replace(/\s/g, "");
}

/** What is written in a document, but not the tables that charts bring for those who hear them. */
function everyText(document: ReportDocument): string[] {
  const inner = (value: unknown): string[] => {
    if (typeof value === "string") return [value];
    if (Array.isArray(value)) return value.flatMap(inner);
    if (value === null || typeof value !== "object") return [];
    return Object.entries(value).flatMap(([name, of]) =>
      ["id", "kind", "language"].includes(name) ? [] : inner(of),
    );
  };
  return inner(withoutHeard(document));
}

function withoutHeard(document: ReportDocument): ReportDocument {
  const heardLess = (block: DocumentBlock): DocumentBlock => {
    if (block.kind !== "intervals" && block.kind !== "months") return block;
    const rows = block.chart.rows.map((row) => ({ ...row, words: "", href: "" }));
    return { ...block, chart: { ...block.chart, rows } } as DocumentBlock;
  };
  return {
    ...document,
    summary: document.summary.map(heardLess),
    parts: document.parts.map((part) => ({ ...part, blocks: part.blocks.map(heardLess) })),
  };
}
