import { type TableName, tables } from "@/lib/records/tables";
import { toothNotations } from "@/lib/records/tooth";
import type { Feed } from "../mapping/feed";
import { fieldOf } from "../mapping/field-of";
import { columnsRead } from "../mapping/fits";
import type { Mapping, TableFeed } from "../mapping/mapping";
import type { ColumnProfile, Recognised } from "../recognise/recognised";
import { columnNames, comparable } from "./column-names";
import { clockOf, feedOf, nearlyAll } from "./propose-feed";
import { stepWords } from "./propose-words";

/** A mapping as far as names and contents of the columns tell it. */
export type Proposal = {
  readonly mapping: Mapping;
  /** Why a field is fed as it is, by "table field". */
  readonly reasons: Readonly<Record<string, string>>;
};

/** Which fields of which table are looked for. */
const looked: Readonly<Partial<Record<TableName, readonly string[]>>> = {
  sessions: words(
    "session_id practice chair clinician patient tooth ended_at started_at outcome difficulty treatment",
  ),
  canals: words(
    "session_id practice canal working_length_mm length_method preparation timer_reset filled",
  ),
  irrigation: words(
    "session_id practice canal irrigant concentration_pct flow_ml_min duration_s dwell_s volume_ml delivery seq",
  ),
  instruments: words("session_id practice canal uses separated"),
};
/** Columns of which one at least tells that the table is in the file. */
const telling: Readonly<Partial<Record<TableName, readonly string[]>>> = {
  sessions: ["patient", "tooth"],
  canals: ["working_length_mm", "preparation", "timer_reset", "filled"],
  irrigation: ["irrigant"],
  instruments: ["uses", "separated"],
};

/** Proposes a mapping; nothing is guessed: what two readings fit is left open, and required fields may be missing. */
export function propose(recognised: Recognised, name: string): Proposal {
  const { columns, layout } = recognised;
  const reasons: Record<string, string> = {};
  const feeds: TableFeed[] = [];
  for (const [table, fields] of Object.entries(looked) as [TableName, readonly string[]][]) {
    const found = byName(columns, fields);
    if (!telling[table]?.some((field) => found.has(field))) continue;
    feeds.push({ table, ...tableFeed(table, found, columns, reasons) });
  }
  const dam = columns.find(({ name }) => columnNames.dam?.test(comparable(name)));
  const visit = byName(columns, ["session_id", "practice"]);
  if (dam && visit.has("session_id")) feeds.push(damFeed(dam, visit, reasons));
  return {
    reasons,
    mapping: {
      format: "canal-audit-mapping-1",
      name: name.replace(/\.[a-z0-9]+$/i, "").slice(0, 80) || "New mapping",
      file: layout,
      columns: columns.map((column) => column.name),
      tables: feeds.length > 0 ? feeds : [{ table: "sessions", fields: {} }],
    },
  };
}

/** The required fields that nothing feeds, by table. */
export function missingFields({ tables: feeds }: Mapping): { table: TableName; field: string }[] {
  return feeds.flatMap(({ table, fields }) => {
    const also = Object.values(fields).flatMap((feed) =>
      "columns" in feed ? (feed.words ?? []).flatMap(({ also = {} }) => Object.keys(also)) : [],
    );
    return tables[table].columns
      .filter(({ name, required }) => required && !(name in fields) && !also.includes(name))
      .filter(({ name }) => !(name === "session_id" && "visit.at" in fields))
      .map(({ name }) => ({ table, field: name }));
  });
}

/** The columns that nothing reads. */
export function unusedColumns({ tables: feeds, columns }: Mapping): string[] {
  const read = new Set(feeds.flatMap(columnsRead));
  return columns.filter((name) => !read.has(name));
}

function byName(columns: readonly ColumnProfile[], fields: readonly string[]) {
  const found = new Map<string, ColumnProfile>();
  const taken = new Set<ColumnProfile>();
  for (const field of fields) {
    const fitting = columns.find(
      (column) =>
        !taken.has(column) &&
        columnNames[field]?.test(comparable(column.name)) &&
        couldFeed(field, column),
    );
    if (!fitting) continue;
    found.set(field, fitting);
    taken.add(fitting);
  }
  return found;
}

/** A column of days is no length of time, whatever its name says. */
function couldFeed(field: string, column: ColumnProfile): boolean {
  if (field === "started_at" || field === "ended_at") return clockOf(column) !== undefined;
  if (field === "canal") return nearlyAll(column.fits.canal, column);
  return true;
}

function tableFeed(
  table: TableName,
  found: ReadonlyMap<string, ColumnProfile>,
  columns: readonly ColumnProfile[],
  reasons: Record<string, string>,
): Omit<TableFeed, "table"> {
  const fields: Record<string, Feed> = {};
  const put = (field: string, feed: Feed, why: string) => {
    fields[field] = feed;
    reasons[`${table} ${field}`] = why;
  };
  for (const [name, profile] of found) {
    const field = fieldOf(table, name);
    if (field)
      put(
        name,
        withTime(feedOf(field, profile), profile, columns),
        `By its name, "${profile.name}".`,
      );
  }
  const tooth = found.get("tooth");
  if (table === "sessions" && tooth) {
    const fitting = toothNotations.filter(
      (one) => tooth.fits.tooth[one] === tooth.cells - tooth.empty,
    );
    const [only] = fitting;
    if (fitting.length === 1 && only)
      put(
        "tooth_notation",
        { always: only },
        `Every cell of "${tooth.name}" is a tooth in ${only}, and in no other notation.`,
      );
  }
  if (table !== "instruments") return { fields };
  put("seq", { always: "1" }, "One row stands for all uses in a canal.");
  const kind = columns.find(({ name }) => columnNames.preparation?.test(comparable(name)));
  const kindField = fieldOf(table, "kind");
  if (kind && kindField) put("kind", feedOf(kindField, kind), `By its name, "${kind.name}".`);
  const uses = found.get("uses");
  return { fields, ...(uses ? { only: [{ column: uses.name, not: ["", "0"] }] } : {}) };
}

/** A day in one column may have its time of day in the next. */
function withTime(feed: Feed, profile: ColumnProfile, columns: readonly ColumnProfile[]): Feed {
  const clock = clockOf(profile);
  if (!("columns" in feed) || !clock || clock === "either" || !feed.clock) return feed;
  if (profile.fits.times.some(({ withTimeOfDay }) => withTimeOfDay > 0)) return feed;
  const after = columns[columns.indexOf(profile) + 1];
  if (!after) return feed;
  const hours = nearlyAll(after.fits.timeOfDay24, after)
    ? 24
    : nearlyAll(after.fits.timeOfDay12, after)
      ? 12
      : 0;
  if (hours === 0) return feed;
  return { ...feed, columns: [profile.name, after.name], clock: { ...clock, hours } };
}

function damFeed(
  dam: ColumnProfile,
  visit: ReadonlyMap<string, ColumnProfile>,
  reasons: Record<string, string>,
): TableFeed {
  const session = visit.get("session_id");
  const practice = visit.get("practice");
  reasons["steps status"] = `By its name, "${dam.name}"; say what an empty cell means.`;
  return {
    table: "steps",
    fields: {
      ...(session ? { session_id: { columns: [session.name] } } : {}),
      ...(practice ? { practice: { columns: [practice.name] } } : {}),
      step: { always: "dam" },
      status: { columns: [dam.name], words: stepWords(dam) },
    },
  };
}

function words(text: string): string[] {
  return text.split(" ");
}
