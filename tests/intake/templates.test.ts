import { describe, expect, it } from "vitest";
import { describeColumns } from "@/lib/intake/describe-columns";
import { tableSchema } from "@/lib/intake/table-schema";
import { exampleCsv, templateCsv } from "@/lib/intake/templates";
import { tableNames, tables } from "@/lib/records/tables";
import { readAll, rowsIn } from "./read-text";

// Expected values are the project's own record format; Table Schema by the Data Package standard, version 2.

describe.each(tableNames)("%s", (name) => {
  it("has a blank template that is read without a row", async () => {
    expect(templateCsv(name)).toMatch(/^[a-z_,]+\r\n$/);
    expect(await readAll("template.csv", templateCsv(name))).toMatchObject([
      { table: name, ignored: [], rows: [] },
    ]);
  });

  it("has examples that the checks take", async () => {
    const [row] = await rowsIn("example.csv", exampleCsv(name));
    expect(row).toMatchObject({ verdict: "good" });
  });

  it("has every column described, with what a cell may hold", () => {
    const rows = describeColumns(name);
    expect(rows.map((row) => row.column)).toEqual(
      tables[name].columns.map((column) => column.name),
    );
    for (const row of rows) expect(row.holds).not.toMatch(/undefined/);
  });

  // Property names and types: Data Package 2.0, Table Schema.
  it("has a Table Schema with the standard's types and its key", () => {
    const schema = tableSchema(name);
    const types = ["string", "number", "integer", "boolean", "date", "datetime"];
    for (const field of schema.fields) expect(types).toContain(field.type);
    expect(schema.primaryKey).toEqual(
      tables[name].columns.filter((column) => column.key).map((column) => column.name),
    );
    expect(schema.missingValues).toEqual([""]);
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
  });
});

it("a flow is over 0 in the schema as in the checks", () => {
  const flow = tableSchema("irrigation").fields.find((field) => field.name === "flow_ml_min");
  expect(flow).toMatchObject({
    type: "number",
    unit: "mL/min",
    constraints: { exclusiveMinimum: 0, maximum: 60 },
  });
});
