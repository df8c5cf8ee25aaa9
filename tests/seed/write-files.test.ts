import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import yauzl from "yauzl";
import { tableNames } from "@/lib/records/tables";
import { span } from "@/seed/scenario";
import { type Delivery, writeFiles } from "@/seed/write-files";

// Properties: the same bytes twice; no expected value but the project's own list of files.

let folder: string;
let first: Delivery[];
let second: Delivery[];

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "canal-audit-seed-"));
  first = await writeFiles(join(folder, "first"), span.last);
  second = await writeFiles(join(folder, "second"), span.last);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

describe("the record files of the demo", () => {
  it("hold the same bytes when written twice", async () => {
    const files = first.flatMap(({ files }) => files);
    expect(files.map(({ name }) => name)).toEqual(
      second.flatMap(({ files }) => files).map(({ name }) => name),
    );
    for (const [place, { path, name }] of files.entries()) {
      const other = second.flatMap(({ files }) => files)[place]?.path ?? "";
      const read = name.endsWith(".xlsx") ? sheetsOf : (file: string) => readFile(file);
      expect(Buffer.compare(await read(path), await read(other)), name).toBe(0);
    }
  });

  it("name every table in every practice, in three formats", async () => {
    for (const { files } of first) {
      const book = files.find(({ name }) => name.endsWith(".xlsx"));
      const inBook = book ? (await sheetsOf(book.path)).toString() : "";
      for (const table of tableNames) {
        const named =
          files.some(({ name }) => name.startsWith(table)) || inBook.includes(`name="${table}"`);
        expect(named, table).toBe(true);
      }
    }
    const endings = first.flatMap(({ files }) => files).map(({ name }) => name.split(".").at(-1));
    expect(new Set(endings)).toEqual(new Set(["csv", "ndjson", "xlsx"]));
  });

  it("hold nothing after the day they go up to, the one mistyped year apart", async () => {
    const [medlar] = await writeFiles(join(folder, "early"), "2025-02-14");
    const sessions = medlar?.files.find(({ name }) => name === "sessions.csv");
    const text = await readFile(sessions?.path ?? "", "utf8");
    const days = [...text.matchAll(/\d{4}-\d\d-\d\d/g)].map(([day]) => day);
    expect(days.length).toBeGreaterThan(100);
    expect([...new Set(days.filter((day) => day > "2025-02-14"))]).toEqual(["2062-02-03"]);
  });
});

/** The XML parts of a workbook, without the zip's times and the document's properties. */
async function sheetsOf(path: string): Promise<Buffer> {
  const zip = await promisify<string, yauzl.Options, yauzl.ZipFile>(yauzl.open)(path, {
    lazyEntries: true,
  });
  const parts: Buffer[] = [];
  await new Promise<void>((resolve, reject) => {
    zip.on("entry", (entry: yauzl.Entry) => {
      if (entry.fileName.startsWith("docProps/")) return zip.readEntry();
      zip.openReadStream(entry, async (trouble, stream) => {
        if (trouble) return reject(trouble);
        for await (const chunk of stream) parts.push(chunk as Buffer);
        zip.readEntry();
      });
    });
    zip.on("end", resolve).on("error", reject);
    zip.readEntry();
  });
  return Buffer.concat(parts);
}
