import { type UnitKind, unitKinds } from "@/lib/protocol/criterion";
import type { Field, List } from "@/lib/protocol/field";
import { fieldOf, listOf, unitFields, unitLists } from "@/lib/protocol/vocabulary";
import type { About } from "../about";
import { unitWords } from "../code-words";
import { fieldChoiceWords, fieldWords } from "../field-sentence";
import { listName } from "../list-words";
import type { OwnWords } from "../own-words";
import { valueWords } from "../value-words";

/** A field as a row shows it. */
export type RowField = Field;

export type Option = { readonly value: string; readonly words: string };
export type OptionGroup = { readonly label: string; readonly options: readonly Option[] };

/** Codes that can be chosen, with their words: those of the record format and a practice's own. */
export type Terms = {
  readonly steps: readonly Option[];
  readonly tasks: readonly Option[];
  readonly reasons: readonly Option[];
};

/** The fields that a condition can be about, in groups. */
export function fieldChoices(about: About, terms: Terms): readonly OptionGroup[] {
  const option = (field: Field): Option => ({
    value: field.name,
    words: fieldChoiceWords(field, about.own),
  });
  if (about.list)
    return [{ label: `Of a ${about.list.item}`, options: about.list.fields.map(option) }];
  const { unit } = about;
  const visit = unitFields.visit.map(({ name }) => name);
  const canal = unitFields.canal.map(({ name }) => name);
  const all = unitFields[unit];
  const own = all.filter(
    ({ name }) => !canal.includes(name) && !(unit !== "visit" && visit.includes(name)),
  );
  const ofCanal = all.filter(({ name }) => canal.includes(name) && !visit.includes(name));
  const ofVisit = all.filter(
    ({ name }) => visit.includes(name) && !own.some((one) => one.name === name),
  );
  return [
    { label: unitLabels[unit], options: own.map(option) },
    { label: "Of the canal", options: ofCanal.map(option) },
    { label: "Of the visit and the tooth", options: ofVisit.map(option) },
    {
      label: "Steps of the protocol",
      options:
        unit === "chair-day"
          ? []
          : terms.steps.map(({ value, words }) => ({
              value: `step/${value}`,
              words: `the step “${words}”`,
            })),
    },
  ].filter(({ options }) => options.length > 0);
}

/** The lists that a unit has. */
export function listChoices({ unit, own }: About, terms: Terms): readonly Option[] {
  return listsOf(unit, terms).map((list) => ({ value: list.name, words: listName(list, own) }));
}

/** The first field and the first list that a condition can be about; undefined where there is none. */
export function firstField(about: About, terms: Terms): Field | undefined {
  const name = fieldChoices(about, terms)[0]?.options[0]?.value;
  if (name === undefined) return undefined;
  return about.list
    ? about.list.fields.find((one) => one.name === name)
    : fieldOf(about.unit, name);
}

export function firstList(about: About, terms: Terms): List | undefined {
  return about.list ? undefined : listsOf(about.unit, terms)[0];
}

/** The list of that name; undefined where such a unit has none. */
export function listAbout(about: About, name: string): List | undefined {
  return listOf(about.unit, name);
}

/** A list's fields that can be added up. */
export function numbersOf(list: List, own: OwnWords): readonly Option[] {
  return list.fields.flatMap((field) =>
    field.kind === "number" ? [{ value: field.name, words: fieldWords(field, own) }] : [],
  );
}

/** The values that a field of choices can have. */
export function valueChoices(field: Field): readonly Option[] {
  return (field.choices ?? []).map((value) => ({ value, words: valueWords(field, value) }));
}

/** What can be counted. */
export const unitChoices: readonly { readonly value: UnitKind; readonly words: string }[] =
  unitKinds.map((value) => ({ value, words: unitWords[value].several }));

function listsOf(unit: UnitKind, terms: Terms): readonly List[] {
  // What other criteria lack is asked by “Record complete” alone.
  const known = unitLists[unit].filter(({ name }) => name !== "gaps");
  const tasks = unit === "chair-day" ? terms.tasks : [];
  return [...known, ...tasks.flatMap(({ value }) => listOf(unit, `upkeep/${value}`) ?? [])];
}

const unitLabels: Readonly<Record<UnitKind, string>> = {
  canal: "Of the canal",
  delivery: "Of the delivery",
  use: "Of the use",
  separation: "Of the separation",
  visit: "Of the visit",
  "chair-day": "Of the day",
};
