import { day, moment } from "../day";
import { count } from "../quantity";
import { clockChoices, clockValue } from "./clock-words";
import type { ConditionDraft, FeedDraft, MappingDraft, TableDraft } from "./draft";
import { fieldWords } from "./field-words";
import { layoutWords } from "./file-words";
import { tableHeading } from "./table-names";
import type { TableTerms } from "./terms";
import { unitWords } from "./unit-words";

type Kept = {
  readonly name: string;
  readonly version: number;
  readonly by: string;
  readonly at: Date;
  readonly retired: boolean;
  readonly mapping: MappingDraft;
};

/** A kept mapping, as the list shows it. */
export type MappingLine = {
  readonly name: string;
  readonly address: string;
  readonly version: string;
  readonly kept: string;
  readonly feeds: string;
  /** The shape of the files that it fits. */
  readonly shape: string;
  readonly files: string;
  readonly retired: boolean;
};

/** One version of a mapping in words. */
export type MappingView = MappingLine & {
  readonly says: string;
  readonly zone: string;
  readonly columns: string;
  readonly isNewest: boolean;
  readonly download: string;
  readonly tables: readonly {
    readonly id: string;
    readonly heading: string;
    readonly only: readonly string[];
    readonly fields: readonly {
      readonly name: string;
      readonly words: string;
      readonly fedBy: string;
      readonly meanings: readonly string[];
    }[];
  }[];
  readonly versions: readonly {
    readonly version: string;
    readonly words: string;
    readonly address: string;
    readonly isShown: boolean;
  }[];
};

/** Where a mapping's page is. */
export function mappingAddress(name: string, version?: number): string {
  const path = `/records/mappings/${encodeURIComponent(name)}`;
  return version === undefined ? path : `${path}?version=${version}`;
}

export function mappingLine(kept: Kept, files: number, zone: string): MappingLine {
  const { name, version, mapping } = kept;
  return {
    name,
    address: mappingAddress(name),
    version: String(version),
    kept: `${moment(kept.at, zone)}, by ${kept.by}`,
    feeds: [...new Set(mapping.tables.map(({ table }) => tableHeading(table)))].join(", "),
    shape: `${layoutWords(mapping.file)}; ${count(mapping.columns.length)} columns`,
    files: count(files),
    retired: kept.retired,
  };
}

export function mappingView(
  kept: Kept,
  about: {
    readonly versions: readonly Omit<Kept, "mapping">[];
    readonly files: number;
    readonly zone: string;
    readonly terms: readonly TableTerms[];
  },
): MappingView {
  const { mapping, name, version } = kept;
  return {
    ...mappingLine(kept, about.files, about.zone),
    // Whether files are recognised by it is the newest version's to say.
    retired: about.versions[0]?.retired ?? kept.retired,
    says: mapping.says ?? "",
    zone: mapping.zone ?? "that of the row's practice",
    columns: mapping.columns.join(", "),
    isNewest: about.versions[0]?.version === version,
    download: `/api/records/mappings/${encodeURIComponent(name)}?version=${version}`,
    tables: mapping.tables.map((table, place) => ({
      id: String(place),
      heading: tableHeading(table.table),
      only: (table.only ?? []).map(conditionWords),
      fields: fieldsOf(table, about.terms),
    })),
    versions: about.versions.map((one) => ({
      version: String(one.version),
      words: `${day(one.at.toISOString())}, by ${one.by}`,
      address: mappingAddress(name, one.version),
      isShown: one.version === version,
    })),
  };
}

/** A condition in words: only where “Files used” is not empty and not 0. */
export function conditionWords({ column, is, not }: ConditionDraft): string {
  const cell = (text: string) => (text === "" ? "empty" : `“${text}”`);
  const parts = [
    ...(is ? [`is ${is.map(cell).join(" or ")}`] : []),
    ...(not ? [`is not ${not.map(cell).join(" and not ")}`] : []),
  ];
  return `Only rows of which “${column}” ${parts.join(" and ")}`;
}

function fieldsOf({ table, fields }: TableDraft, terms: readonly TableTerms[]) {
  const known = terms.find(({ name }) => name === table)?.fields ?? [];
  return known.flatMap(({ name, choices }) => {
    const feed = fields[name];
    if (!feed) return [];
    const said = (value: string) => choices.find((one) => one.value === value)?.words ?? value;
    return [
      { name, words: fieldWords(name), fedBy: fedBy(feed, said), meanings: meanings(feed, said) },
    ];
  });
}

function fedBy(feed: FeedDraft, said: (value: string) => string): string {
  if ("always" in feed) return `always ${said(feed.always)}`;
  if ("numbered" in feed) return "numbered in the order of the file";
  const clock = clockChoices.find(({ value }) => value === clockValue(feed.clock));
  return [
    feed.columns.map((name) => `“${name}”`).join(" and "),
    ...(feed.unit ? [`in ${unitWords(feed.unit)}`] : []),
    ...(clock ? [clock.words] : []),
  ].join("; ");
}

function meanings(feed: FeedDraft, said: (value: string) => string): string[] {
  if (!("columns" in feed)) return [];
  return (feed.words ?? []).map(({ word, means, also }) => {
    const others = Object.entries(also ?? {}).map(
      ([field, value]) => `${fieldWords(field)} ${value.replace("{number}", "that number")}`,
    );
    const meant = means === null ? "not recorded" : said(means).replace("{number}", "that number");
    const from = word === "" ? "the empty cell" : `“${word.replace("{number}", "any number")}”`;
    return [`${from} is ${meant}`, ...others].join("; ");
  });
}
