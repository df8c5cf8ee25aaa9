import { describe, expect, it } from "vitest";
import { type TableName, tableNames, tables } from "@/lib/records/tables";

// Expected values are the project's own record format.

/** The columns of each table that are required or part of the key, as the record format's own note lists them. */
const keys: Record<TableName, string[]> = {
  people: ["person", "practice", "code", "from"],
  sessions: ["session_id", "practice"],
  canals: ["session_id", "canal"],
  irrigation: ["session_id", "canal", "seq"],
  instruments: ["session_id", "canal", "seq"],
  followups: ["session_id", "canal", "seq", "day"],
  steps: ["session_id", "canal", "step"],
  exceptions: ["session_id", "canal", "criterion"],
  incidents: ["session_id", "kind"],
  upkeep: ["practice", "chair", "device", "day", "task"],
};

describe.each(tableNames)("the table %s", (name) => {
  const { columns } = tables[name];

  it("has the key of the record format", () => {
    expect(
      columns
        .filter((column) => column.key)
        .map((column) => column.name)
        .sort(),
    ).toEqual([...keys[name]].sort());
  });

  it("has each column once, with a sentence and an example", () => {
    expect(new Set(columns.map((column) => column.name)).size).toBe(columns.length);
    for (const column of columns) {
      expect(column.says).toMatch(/\.$/);
      expect(column.example).not.toBe("");
    }
  });

  it("may carry the practice", () => {
    expect(columns.map((column) => column.name)).toContain("practice");
  });

  it("has choices where it asks for one, and a range for every number", () => {
    for (const column of columns) {
      if (column.type === "choice") expect(column.choices?.length).toBeGreaterThan(1);
      if (["number", "whole", "count"].includes(column.type)) {
        expect(column.least ?? column.over).toBeTypeOf("number");
        expect(column.most).toBeTypeOf("number");
      }
    }
  });

  it("has a parent whose key its own begins with", () => {
    const parent = tables[name].parent;
    if (!parent) return expect(["people", "sessions", "upkeep"]).toContain(name);
    const own = columns.map((column) => column.name);
    expect(own).toEqual(expect.arrayContaining(keys[parent]));
  });
});
