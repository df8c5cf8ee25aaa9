import { describe, expect, it } from "vitest";
import { tableByTitle } from "@/lib/intake/which-table";
import { tableNames, tables } from "@/lib/records/tables";
import { readAll } from "./read-text";

// Expected values are the project's own rules, worked by hand.

describe("the table of a file by its name", () => {
  it.each(tableNames)("%s", (name) => {
    expect(tableByTitle(`${name}.csv`)).toBe(name);
  });

  it.each([
    ["irrigation-2026-07.csv", "irrigation"],
    ["03_canals.xlsx", "canals"],
    ["North Steps (2).csv", "steps"],
    ["export.csv", undefined],
    ["sessions-and-canals.csv", undefined],
    ["footsteps.csv", undefined],
  ])("%s is %s", (title, table) => {
    expect(tableByTitle(title)).toBe(table);
  });
});

describe("the table of a file by its header", () => {
  it.each(tableNames)("%s, with all its columns", async (name) => {
    const header = tables[name].columns.map((column) => column.name).join(",");
    expect(await readAll("export.csv", `${header}\n`)).toMatchObject([
      { table: name, ignored: [] },
    ]);
  });

  it("names columns that no field takes", async () => {
    expect(await readAll("canals.csv", "session_id,canal,preparation,Shade,\n")).toMatchObject([
      { ignored: ["shade"] },
    ]);
  });

  it("that fits two tables alike is refused, naming both", async () => {
    const both = new Set(
      [...tables.irrigation.columns, ...tables.instruments.columns].map((column) => column.name),
    );
    const equal = [...both].filter(
      (name) => !["started_at", "instrument_id", "uses", "size", "lot"].includes(name),
    );
    const takes = (name: "irrigation" | "instruments") =>
      tables[name].columns.filter((column) => equal.includes(column.name)).length;
    const surplus = takes("instruments") - takes("irrigation");
    const optional = tables.instruments.columns.filter(
      (column) =>
        !column.required &&
        equal.includes(column.name) &&
        !tables.irrigation.columns.some((one) => one.name === column.name),
    );
    const header = equal.filter(
      (name) => !optional.slice(0, Math.max(0, surplus)).some((column) => column.name === name),
    );
    await expect(readAll("export.csv", `${header.join(",")}\n`)).rejects.toThrow(
      /^export\.csv: its header fits the tables irrigation and instruments/,
    );
  });

  it("that fits none is refused, listing the tables", async () => {
    await expect(readAll("export.csv", "session_id,shade\n")).rejects.toThrow(
      /\(session_id, shade\).*people, sessions, canals/,
    );
  });

  it.each(["data.txt", "canals.xls", "canals"])("%s is refused by its ending", async (name) => {
    await expect(readAll(name, "session_id\n")).rejects.toThrow(
      /\.csv, \.xlsx, \.json or \.ndjson/,
    );
  });
});
