import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { mappingJsonSchema } from "@/lib/intake/mapping/json-schema";
import { mappingSchema } from "@/lib/intake/mapping/mapping";
import { sourceUnits } from "@/lib/intake/mapping/source-units";
import { tableNames } from "@/lib/records/tables";

// Expected values are the project's own: mappings written by hand, and what each property must say of itself.

type Node = Readonly<Record<string, unknown>>;
const schema = mappingJsonSchema() as Node;

test("says what it is, and takes nothing that it does not name", () => {
  expect(schema).toMatchObject({
    $schema: "https://json-schema.org/draft/2020-12/schema",
    type: "object",
    additionalProperties: false,
    required: ["format", "name", "file", "columns", "tables"],
  });
  const units = nodes(schema).flatMap(({ unit }) => (unit as { enum: string[] })?.enum ?? []);
  expect(units.sort()).toEqual([...sourceUnits].sort());
});

test("has every property and every field that the hand-written mappings use", () => {
  const names = new Set(
    nodes(schema).flatMap((node) => Object.keys((node.properties as Node) ?? {})),
  );
  for (const name of ["third/chart", "third/pump", "foreign/motor-log", "foreign/chart-export"]) {
    const written = JSON.parse(readFileSync(`tests/data/${name}.mapping.json`, "utf8"));
    expect(mappingSchema.safeParse(written).error, name).toBeUndefined();
    for (const key of keysOf(written)) expect(names, name).toContain(key);
  }
});

test("names the fields of each table, what each holds and its unit, and no others", () => {
  const { properties } = schema as { properties: { tables: { items: { oneOf: Node[] } } } };
  const of = Object.fromEntries(
    properties.tables.items.oneOf.map(({ title, properties }) => [
      title,
      (properties as { fields: { properties: Node; additionalProperties: boolean } }).fields,
    ]),
  );
  expect(Object.keys(of)).toEqual([...tableNames]);
  expect(of.irrigation?.additionalProperties).toBe(false);
  expect(of.irrigation?.properties.flow_ml_min).toEqual({
    $ref: "#/$defs/feed",
    description: "Flow. In the record format: a number over 0 and up to 60 mL/min, as 6.",
  });
  expect(Object.keys(of.irrigation?.properties ?? {})).toContain("visit.at");
  expect(Object.keys(of.sessions?.properties ?? {})).not.toContain("visit.at");
});

test("a field that the table does not have is refused with its name", () => {
  const written = JSON.parse(readFileSync("tests/data/third/pump.mapping.json", "utf8"));
  written.tables[0].fields.volum_ml = { columns: ["volume_cm3"] };
  const { error } = mappingSchema.safeParse(written);
  expect(error?.issues[0]?.message).toContain(
    'irrigation have no field "volum_ml", but session_id',
  );
});

test("a mapping with a word that no property has is refused with its place", () => {
  const written = JSON.parse(readFileSync("tests/data/third/pump.mapping.json", "utf8"));
  written.tables[0].fields.dwell_s.units = "min";
  const { error } = mappingSchema.safeParse(written);
  expect(error?.issues[0]?.path.slice(0, 4)).toEqual(["tables", 0, "fields", "dwell_s"]);
});

/** All objects within a schema. */
function nodes(node: unknown): Node[] {
  if (node === null || typeof node !== "object") return [];
  const inside = Object.values(node).flatMap(nodes);
  return Array.isArray(node) ? inside : [node as Node, ...inside];
}

/** Names of the properties of an object and of all within. */
function keysOf(value: unknown): string[] {
  if (value === null || typeof value !== "object") return [];
  const inside = Object.values(value).flatMap(keysOf);
  return Array.isArray(value) ? inside : [...Object.keys(value), ...inside];
}
