import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { FileLayout } from "@/lib/intake/mapping/file-layout";
import { clockOf } from "@/lib/intake/propose/propose-feed";
import { recognise } from "@/lib/intake/recognise/recognise";

// Expected values are worked by hand from the few lines of each file.

async function looked(
  content: string | Uint8Array,
  name = "file.csv",
  asked: Partial<FileLayout> = {},
) {
  const folder = await mkdtemp(join(tmpdir(), "canal-audit-recognise-"));
  try {
    const path = join(folder, "file");
    await writeFile(path, content);
    return await recognise(path, name, asked);
  } finally {
    await rm(folder, { recursive: true });
  }
}

const lines = "Vorgang;Lösung;Menge\nV-1;Wasser;3,5\nV-1;Wasser;12,25\n";

describe("the encoding", () => {
  test("by its mark, by every second byte, by what UTF-8 allows, else an older one", async () => {
    const wide = Buffer.from(lines, "utf16le");
    expect((await looked(Buffer.concat([Buffer.from([0xff, 0xfe]), wide]))).layout.encoding).toBe(
      "utf-16le",
    );
    expect((await looked(wide)).layout.encoding).toBe("utf-16le");
    expect((await looked(Buffer.from(wide).swap16())).layout.encoding).toBe("utf-16be");
    expect((await looked(lines)).layout.encoding).toBe("utf-8");
    const old = await looked(Buffer.from(lines, "latin1"));
    expect(old.layout.encoding).toBe("windows-1252");
    expect(old.columns.map(({ name }) => name)).toEqual(["Vorgang", "Lösung", "Menge"]);
  });

  test("a letter that is wrong in UTF-8 on the last line settles it", async () => {
    const long = Buffer.concat([
      Buffer.from("a;b\n".repeat(20_000)),
      Buffer.from([0x41, 0xf6, 0x3b, 0x42, 0x0a]),
    ]);
    expect((await looked(long)).layout.encoding).toBe("windows-1252");
  });
});

describe("how lines are cut", () => {
  test("decimal commas do not win over the separator", async () => {
    const { layout, rows } = await looked(lines);
    expect(layout).toMatchObject({ separator: ";", decimal: ",", headerLine: 1 });
    expect(rows).toBe(2);
  });

  test("tabs and bars; a separator within quotes does not count", async () => {
    expect((await looked('a\tb\n"x\ty"\t2\nz\t3\n')).layout.separator).toBe("\t");
    expect((await looked("a|b|c\n1,5|x|y\n2,5|x|y\n")).layout.separator).toBe("|");
  });

  test("a title block above the names is passed over, with true line numbers", async () => {
    const { layout, readings, rows } = await looked(
      "Practice report;;\nfrom 1 July;;\n\nVisit;Canal;mL\nV-1;MB;3\nV-2;D;4\n",
    );
    expect(layout.headerLine).toBe(4);
    expect(readings.find(({ about }) => about === "headerLine")?.sure).toBe("likely");
    expect(rows).toBe(2);
  });

  test("what was settled by hand holds", async () => {
    const { layout, columns } = await looked(lines, "file.csv", {
      separator: ",",
      headerLine: 1,
    });
    expect(layout.separator).toBe(",");
    expect(columns[0]?.name).toBe("Vorgang;Lösung;Menge");
  });
});

describe("what two readings fit", () => {
  test("numbers as 1.234 alone are asked about, one with decimals settles them", async () => {
    expect((await looked("a;b\nx;1.234\ny;5.678\n")).decimalUnsettled).toBe("1.234");
    const settled = await looked("a;b\nx;1.234\ny;5.678,5\n");
    expect(settled.decimalUnsettled).toBeNull();
    expect(settled.layout).toMatchObject({ decimal: ",", thousands: "." });
    expect(
      (await looked("a;b\nx;1.234\n", "file.csv", { decimal: "." })).decimalUnsettled,
    ).toBeNull();
  });

  test("days that are all up to the twelfth have two orders; a thirteenth anywhere settles them", async () => {
    const of = async (days: string) => {
      const { columns } = await looked(`Visit;Date\n${days}`);
      return columns[1] && clockOf(columns[1]);
    };
    expect(await of("a;03/04/2026\nb;05/06/2026\n")).toBe("either");
    expect(await of("a;03/04/2026\nb;13/06/2026\n")).toMatchObject({ day: "day-month-year" });
    expect(await of("a;03/04/2026\nb;05/16/2026\n")).toMatchObject({ day: "month-day-year" });
    expect(await of("a;2026-04-03\nb;2026-06-05\n")).toMatchObject({ day: "year-month-day" });
  });

  test("teeth that are valid in two notations are counted under both", async () => {
    const { columns } = await looked("Tooth,x\n11,a\n26,b\n");
    expect(columns[0]?.fits.tooth).toEqual({ fdi: 2, universal: 2, palmer: 0 });
  });
});

describe("what is no table", () => {
  const refused = (content: string | Uint8Array, name?: string) =>
    expect(looked(content, name)).rejects;

  test("is refused in a sentence that names the file", async () => {
    await refused("").toThrow("file.csv: it is empty");
    await refused("a;b;c\n").toThrow("file.csv: there are no rows below its header");
    await refused("%PDF-1.7 …").toThrow("it is a PDF document");
    await refused("PK\u0003\u0004", "file.csv").toThrow("it is a packed file");
    await refused("not a workbook", "book.xlsx").toThrow("it is no workbook");
    await refused(Buffer.from([0x61, 0, 0, 0x62, 0x0a, 0, 0x63])).toThrow("it is no text");
    await refused(`${"a;".repeat(3000)}z\n${"1;".repeat(3000)}2\n`).toThrow(
      "more than 2000 columns",
    );
  });

  test("lines that cannot be cut into the header's columns are counted and cost no other", async () => {
    const { ragged, rows } = await looked('a;b\n1;2\n1;2;3\n"open;4\n5;6\n');
    expect([rows, ragged]).toEqual([4, 2]);
  });
});
