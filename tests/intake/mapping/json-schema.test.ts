import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
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

const accepts = new Ajv2020({ strict: true, allErrors: true }).compile(schema);
const written = ["third/chart", "third/pump", "foreign/motor-log", "foreign/chart-export"];

test.each(written)("the mapping %s is valid by an independent validator", (name) => {
  const mapping = mappingFile(name);
  expect(accepts(mapping), JSON.stringify(accepts.errors)).toBe(true);
  expect(mappingSchema.safeParse(mapping).error).toBeUndefined();
});

type Change = (pump: PumpMapping) => void;
type PumpMapping = {
  columns?: unknown;
  file: Record<string, unknown>;
  tables: { table: string; fields: Record<string, Record<string, unknown>> }[];
};

test.each<[string, Change]>([
  ["a field that the table does not have", (pump) => put(pump, "volum_ml", { columns: ["a"] })],
  ["a field of another table", (pump) => put(pump, "patient", { columns: ["a"] })],
  ["a table that there is not", (pump) => Object.assign(pump.tables[0] ?? {}, { table: "rinses" })],
  ["a property that a feed does not have", (pump) => put(pump, "dwell_s", { column: ["a"] })],
  ["a unit that is not known", (pump) => put(pump, "dwell_s", { columns: ["a"], unit: "cups" })],
  ["a feed that says nothing", (pump) => put(pump, "dwell_s", {})],
  ["no columns", (pump) => delete pump.columns],
  ["an encoding that is not known", (pump) => Object.assign(pump.file, { encoding: "ebcdic" })],
])("%s is refused by the schema and by the reading of mappings", (_, change) => {
  const mapping = mappingFile("third/pump") as PumpMapping;
  change(mapping);
  expect(accepts(mapping)).toBe(false);
  expect(mappingSchema.safeParse(mapping).success).toBe(false);
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

test("a time zone that there is not, one sign for decimals and thousands, and a numbered field but seq are refused", () => {
  const pump = mappingFile("third/pump") as PumpMapping;
  const file = { ...pump.file, decimal: ",", thousands: "," };
  put(pump, "dwell_s", { numbered: true });
  const { error } = mappingSchema.safeParse({ ...pump, zone: "Europe/Atlantis", file });
  expect(error?.issues.map(({ path }) => path.join("."))).toEqual([
    ...["file.thousands", "zone", "tables.0.fields.dwell_s"],
  ]);
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

function mappingFile(name: string): unknown {
  return JSON.parse(readFileSync(`tests/data/${name}.mapping.json`, "utf8"));
}

function put({ tables }: PumpMapping, field: string, feed: Record<string, unknown>): void {
  Object.assign(tables[0]?.fields ?? {}, { [field]: feed });
}
