import { z } from "zod";
import type { Column } from "@/lib/records/column";
import { type TableName, tableNames, tables } from "@/lib/records/tables";
import { describeColumn } from "../describe-columns";
import { fieldsOf } from "./field-of";
import { mappingSchema } from "./mapping";

type Node = Record<string, unknown>;

/**
 * The published JSON Schema (draft 2020-12) of a mapping, so that one can be written without this tool: for every table it
 * names the fields, with what each holds.
 */
export function mappingJsonSchema(): Node {
  const whole: Node = z.toJSONSchema(mappingSchema, { io: "input", target: "draft-2020-12" });
  const properties = whole.properties as { tables: { items: { properties: Node } } };
  const {
    fields,
    table: _,
    ...others
  } = properties.tables.items.properties as {
    fields: { additionalProperties: Node; description: string };
    table: Node;
  };
  return {
    ...whole,
    title: "Mapping of files of another system",
    properties: {
      ...properties,
      tables: {
        ...properties.tables,
        items: {
          ...properties.tables.items,
          properties: { table: { enum: tableNames }, fields: { type: "object" }, ...others },
          oneOf: tableNames.map((table) => ofTable(table, fields.description)),
        },
      },
    },
    $defs: { feed: fields.additionalProperties },
  };
}

function ofTable(table: TableName, description: string): Node {
  const named = fieldsOf(table).map((field) => [
    field.name,
    { $ref: "#/$defs/feed", description: saying(field) },
  ]);
  return {
    title: table,
    description: tables[table].says,
    properties: {
      table: { const: table },
      fields: {
        ...{ type: "object", description, properties: Object.fromEntries(named) },
        additionalProperties: false,
      },
    },
  };
}

function saying(field: Column): string {
  const holds = describeColumn(field);
  const unit = field.unit && !holds.includes(field.unit) ? ` Unit: ${field.unit}.` : "";
  const required = field.required ? " Required." : "";
  return `${field.says}${required} In the record format: ${holds}, as ${field.example}.${unit}`;
}
