import { canalNames } from "@/lib/records/canal-name";
import type { Column } from "@/lib/records/column";
import { ownCodePattern } from "@/lib/records/own-code";
import { type TableName, tables } from "@/lib/records/tables";

type Constraints = {
  required?: true;
  enum?: readonly string[];
  minimum?: number;
  exclusiveMinimum?: number;
  maximum?: number;
  pattern?: string;
};
type Field = {
  name: string;
  type: "string" | "number" | "integer" | "boolean" | "datetime" | "date";
  format?: "any";
  description: string;
  example: string;
  trueValues?: readonly string[];
  falseValues?: readonly string[];
  unit?: string;
  constraints?: Constraints;
};
export type TableSchema = {
  $schema: string;
  fields: Field[];
  missingValues: readonly string[];
  primaryKey: string[];
  foreignKeys?: { fields: string[]; reference: { resource: TableName; fields: string[] } }[];
};

/** A table as a Table Schema (Data Package 2.0, an open standard); `unit` (UCUM) is an addition of its own. */
export function tableSchema(table: TableName): TableSchema {
  const { columns, parent } = tables[table];
  const visit = {
    fields: ["session_id"],
    reference: { resource: "sessions" as const, fields: ["session_id"] },
  };
  return {
    $schema: "https://datapackage.org/profiles/2.0/tableschema.json",
    fields: columns.map(field),
    missingValues: [""],
    primaryKey: columns.filter((column) => column.key).map((column) => column.name),
    ...(parent ? { foreignKeys: [visit] } : {}),
  };
}

function field(column: Column): Field {
  const constraints = constraintsOf(column);
  return {
    name: column.name,
    ...kindOf(column),
    description: column.says,
    example: column.example,
    ...(column.unit ? { unit: column.unit } : {}),
    ...(Object.keys(constraints).length > 0 ? { constraints } : {}),
  };
}

function kindOf({ type }: Column): Pick<Field, "type" | "format" | "trueValues" | "falseValues"> {
  if (type === "number") return { type: "number" };
  if (type === "whole") return { type: "integer" };
  if (type === "flag") return { type: "boolean", trueValues: ["yes"], falseValues: ["no"] };
  // With or without an offset, so in no single format of the standard.
  if (type === "instant") return { type: "datetime", format: "any" };
  return { type: type === "day" ? "date" : "string" };
}

function constraintsOf(column: Column): Constraints {
  const range = column.type === "number" || column.type === "whole";
  const pattern = column.alsoOwn
    ? [...(column.choices ?? []), ownCodePattern].join("|")
    : patterns[column.type];
  return {
    ...(column.required ? { required: true } : {}),
    ...(column.choices && !column.alsoOwn ? { enum: column.choices } : {}),
    ...(range && column.least !== undefined ? { minimum: column.least } : {}),
    ...(range && column.over !== undefined ? { exclusiveMinimum: column.over } : {}),
    ...(range && column.most !== undefined ? { maximum: column.most } : {}),
    ...(pattern ? { pattern } : {}),
  };
}

const patterns: Partial<Record<Column["type"], string>> = {
  count: "yes|no|[0-9]{1,4}",
  canal: `${canalNames.join("|")}|unknown-[1-9][0-9]?`,
};
