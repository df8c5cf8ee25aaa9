import type { TableName } from "@/lib/records/tables";
import type { Feed } from "../mapping/feed";
import { fieldOf } from "../mapping/field-of";
import type { TableFeed } from "../mapping/mapping";
import type { ColumnProfile } from "../recognise/recognised";
import { columnNames, comparable } from "./column-names";
import { type ColumnsByField, columnsByName } from "./columns-by-name";
import { findingFeeds, minutesProposed, notationFeed, notationOf } from "./find-visit";
import { clockOf, feedOf } from "./propose-feed";
import { openWords } from "./propose-words";
import { fieldsLookedFor, fieldsOfVisitAlone, fieldsThatTell } from "./table-fields";

/** A table's feeds and why each is proposed, by the field's name; undefined where the file does not tell of the table. */
export function proposedTable(
  table: TableName,
  columns: readonly ColumnProfile[],
): { feed: TableFeed; why: Record<string, string> } | undefined {
  const visit = columnsByName("sessions", fieldsLookedFor.sessions ?? [], columns);
  const found = columnsByName(table, fieldsLookedFor[table] ?? [], free(table, columns, visit));
  if (!fieldsThatTell[table]?.some((set) => set.every((field) => found.has(field))))
    return undefined;
  const fields: Record<string, Feed> = {};
  const why: Record<string, string> = {};
  for (const [name, profile] of found) {
    const field = fieldOf(table, name);
    if (!field) continue;
    fields[name] = feedOf(field, profile, columns);
    why[name] = `By its name, "${profile.name}".${doubt(name, table, profile)}`;
  }
  const more: Pick<TableFeed, "only" | "minutes"> = {};
  const put = (name: string, feed: Feed, because: string) => {
    fields[name] = feed;
    why[name] = because;
  };
  if (table === "sessions") {
    const tooth = found.get("tooth");
    Object.assign(fields, notationFeed("tooth_notation", tooth));
    if (tooth) why[fields.tooth_notation ? "tooth_notation" : "tooth"] = notationOf(tooth).why;
  }
  if (table === "irrigation" || table === "instruments") {
    if (!found.has("session_id")) {
      const finding = findingFeeds(visit, columns);
      if (finding) more.minutes = minutesProposed;
      for (const [name, feed] of Object.entries(finding ?? {}))
        put(name, feed, "No column names the visit: it is found by time, chair, tooth and canal.");
    }
    const moment = momentOfRow(found.get("session_id"), columns);
    const began = fieldOf(table, "started_at");
    if (moment && began)
      put(
        "started_at",
        feedOf(began, moment, columns),
        `"${moment.name}" differs from row to row.`,
      );
    const uses = found.get("uses");
    if (uses) {
      put("seq", { always: "1" }, "One row stands for all uses in a canal.");
      more.only = [{ column: uses.name, not: ["", "0"] }];
    } else if (!found.has("seq"))
      put("seq", { numbered: true }, "No column has it: rows are numbered as they come.");
  }
  if (table === "instruments") {
    const kind = columns.find(({ name }) => columnNames.preparation?.test(comparable(name)));
    const field = fieldOf(table, "kind");
    if (kind && field) put("kind", feedOf(field, kind, columns), `By its name, "${kind.name}".`);
  }
  return { feed: { table, ...more, fields }, why };
}

/** The columns that a table may take: those of the visit alone are no other table's. */
function free(table: TableName, columns: readonly ColumnProfile[], visit: ColumnsByField) {
  if (table === "sessions" || table === "upkeep") return columns;
  const taken = new Set(fieldsOfVisitAlone.map((field) => visit.get(field)));
  return columns.filter((column) => !taken.has(column));
}

/**
 * The column of a moment that is the row's own. One that stays the same while the visit does is the visit's; without a
 * visit's number every row's moment is its own.
 */
function momentOfRow(session: ColumnProfile | undefined, columns: readonly ColumnProfile[]) {
  const moment = columns.find(
    (column) =>
      columnNames.started_at?.test(comparable(column.name)) &&
      column.fits.times.some(({ withTimeOfDay }) => withTimeOfDay > 0),
  );
  if (!moment || !session) return moment;
  return moment.sameAsBefore < session.sameAsBefore / 2 ? moment : undefined;
}

/** What a person must still settle in a field. */
function doubt(name: string, table: TableName, profile: ColumnProfile): string {
  const field = fieldOf(table, name);
  if (!field) return "";
  if ((field.type === "instant" || field.type === "day") && clockOf(profile) === "either")
    return " Its days can be read with the day or the month first: choose the order.";
  const open = openWords(field, profile);
  if (open.length === 0) return "";
  const some = open.slice(0, 4).map((text) => `"${text}"`);
  return ` Say what ${some.join(", ")}${open.length > some.length ? " and others" : ""} mean.`;
}
