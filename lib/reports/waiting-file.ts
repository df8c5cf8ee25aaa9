import { recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { fieldsOf } from "@/lib/intake/mapping/field-of";
import { type Mapping, mappingSchema } from "@/lib/intake/mapping/mapping";
import { unitsFor } from "@/lib/intake/mapping/units";
import { propose } from "@/lib/intake/propose/propose";
import { recognise } from "@/lib/intake/recognise/recognise";
import type { ColumnProfile, Recognised } from "@/lib/intake/recognise/recognised";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import { type TableName, tableNames, tables } from "@/lib/records/tables";
import { pathOfWaiting, saveDraft, saveRecognised, waitingFile } from "@/lib/store/waiting";
import { count } from "@/lib/views/quantity";
import { whatOf } from "./waiting-words";

export type { Mapping } from "@/lib/intake/mapping/mapping";

/** A column of the file as the editor needs it; texts that may name a patient are left out. */
export type FileColumn = {
  readonly name: string;
  readonly words: readonly { readonly text: string; readonly count: string }[];
  readonly more: boolean;
  readonly empty: string;
  readonly hidden: boolean;
};

/** A field that a table has, as the editor needs it. */
export type FieldOffer = {
  readonly name: string;
  readonly says: string;
  readonly required: boolean;
  readonly choices: readonly string[];
  readonly isMoment: boolean;
  readonly units: readonly string[];
};

export type WaitingFilePage = {
  readonly id: number;
  readonly name: string;
  /** Why nothing can be read from it; null where it can. */
  readonly trouble: string | null;
  readonly understood: readonly {
    readonly about: string;
    readonly says: string;
    readonly sure: string;
  }[];
  readonly rows: string;
  readonly firstRows: readonly (readonly string[])[];
  readonly columns: readonly FileColumn[];
  readonly mapping: Mapping | null;
  readonly reasons: Readonly<Record<string, string>>;
  readonly offers: Readonly<Record<string, readonly FieldOffer[]>>;
  readonly tables: readonly { readonly name: TableName; readonly says: string }[];
};

/** A file that waits: how it was understood, and its mapping as far as it is made. Null where there is none. @throws Refused */
export async function waitingFilePage(viewer: Viewer, id: number): Promise<WaitingFilePage | null> {
  const reach = recordsReach(viewer);
  const file = Number.isSafeInteger(id) && id < 2 ** 31 ? await waitingFile(reach, id) : null;
  if (!file) return null;
  const nothing = {
    ...{ id, name: file.name, understood: [], rows: "", firstRows: [], columns: [] },
    ...{ mapping: null, reasons: {}, offers: {}, tables: [] },
  };
  let recognised = file.recognised as Recognised | null;
  if (!recognised) {
    try {
      recognised = await recognise(pathOfWaiting(file), file.name);
    } catch (trouble) {
      if (!(trouble instanceof UnreadableFile)) throw trouble;
      await saveRecognised(reach, id, { trouble: trouble.message });
      return { ...nothing, trouble: trouble.message };
    }
    await saveRecognised(reach, id, { recognised });
  }
  const proposal = propose(recognised, file.name);
  const draft = mappingSchema.safeParse(file.draft);
  const mapping = draft.success ? draft.data : proposal.mapping;
  if (!draft.success) await saveDraft(reach, id, mapping);
  const hidden = patientColumns(mapping, recognised.columns);
  return {
    ...{ ...nothing, trouble: null, mapping, reasons: proposal.reasons },
    rows: count(recognised.rows),
    understood: recognised.readings.map(({ about, why, sure }) => ({
      about: whatOf(about, mapping.file),
      says: why,
      sure,
    })),
    firstRows: recognised.firstRows.map((row) =>
      mapping.columns.map((name) => (hidden.has(name) ? "(not shown)" : (row[name] ?? ""))),
    ),
    columns: recognised.columns.map((column) => columnOffer(column, hidden.has(column.name))),
    offers: Object.fromEntries(tableNames.map((table) => [table, fieldOffers(table)])),
    tables: tableNames.map((name) => ({ name, says: tables[name].says })),
  };
}

/** How many words of a column the editor lists. */
const wordsListed = 60;

function columnOffer(column: ColumnProfile, hidden: boolean): FileColumn {
  const words = hidden ? [] : column.words.slice(0, wordsListed);
  return {
    name: column.name,
    words: words.map(({ text, count: times }) => ({ text, count: count(times) })),
    more: hidden || column.manyWords || column.words.length > wordsListed,
    empty: count(column.empty),
    hidden,
  };
}

function fieldOffers(table: TableName): FieldOffer[] {
  return fieldsOf(table).map(({ name, says, required, choices, type, unit }) => ({
    ...{ name, says, required: required === true },
    choices: choices ?? (type === "flag" ? ["yes", "no"] : []),
    isMoment: type === "instant" || type === "day",
    units: unit ? unitsFor(unit) : [],
  }));
}

/** Columns that feed the patient, or whose names say that they name a person. */
function patientColumns(mapping: Mapping, columns: readonly ColumnProfile[]): Set<string> {
  const fed = mapping.tables.flatMap(({ fields }) => {
    const feed = fields.patient;
    return feed && "columns" in feed ? feed.columns : [];
  });
  const named = columns.filter(({ name }) =>
    /patient|\bname|surname|birth|geburt|nom\b/i.test(name),
  );
  return new Set([...fed, ...named.map(({ name }) => name)]);
}
