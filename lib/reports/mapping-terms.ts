import { describeColumn } from "@/lib/intake/describe-columns";
import { fieldsOf } from "@/lib/intake/mapping/field-of";
import { unitsFor } from "@/lib/intake/mapping/units";
import { type TableName, tableNames, tables } from "@/lib/records/tables";
import { fieldWords } from "@/lib/views/mapping/field-words";
import { tableHeading } from "@/lib/views/mapping/table-names";
import type { FieldTerms, TableTerms } from "@/lib/views/mapping/terms";
import { unitWords } from "@/lib/views/mapping/unit-words";
import { reasonWords } from "@/lib/views/reason-words";
import { irrigantWords } from "@/lib/views/record-words";

/** All that a mapping may feed, in words. */
export function mappingTerms(): TableTerms[] {
  return tableNames.map((name) => ({
    name,
    words: tableHeading(name),
    says: tables[name].says,
    fields: fieldTerms(name),
  }));
}

function fieldTerms(table: TableName): FieldTerms[] {
  return fieldsOf(table).map((field) => ({
    name: field.name,
    words: fieldWords(field.name),
    says: field.says,
    holds: describeColumn(field),
    required: field.required === true,
    type: field.type,
    choices: choicesOf(field),
    units: field.unit
      ? unitsFor(field.unit).map((unit) => ({ value: unit, words: unitWords(unit) }))
      : [],
  }));
}

function choicesOf({ name, type, choices = [] }: ReturnType<typeof fieldsOf>[number]) {
  if (type === "flag") return ["yes", "no"].map((value) => ({ value, words: value }));
  return choices.map((value) => ({ value, words: choiceWords(name, value) }));
}

function choiceWords(field: string, value: string): string {
  if (field === "irrigant") return irrigantWords(value);
  if (field.endsWith("tooth_notation")) return notationWords[value] ?? value;
  // "other" and "dressing" are called by what they are of elsewhere.
  return value === "other" ? "other" : reasonWords(value);
}

const notationWords: Readonly<Record<string, string>> = {
  fdi: "FDI: two digits, as 36 (ISO 3950)",
  universal: "universal: 1 to 32, A to T",
  palmer: "Palmer as text: quadrant and place, as UR6",
};
