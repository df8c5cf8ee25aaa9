import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { stringify } from "csv-stringify/sync";
import writeWorkbook from "write-excel-file/node";
import { type TableName, tables } from "@/lib/records/tables";
import { addMess } from "./add-mess";
import { makePractice } from "./make-practice";
import type { Row, Rows } from "./rows";
import { type Practice, practices } from "./scenario";

/** The record files of one practice, in the order in which they come in. */
export type Delivery = {
  readonly practice: Practice;
  readonly files: readonly { readonly path: string; readonly name: string }[];
};

type File = { readonly name: string; readonly write: (path: string) => Promise<void> };

/**
 * Writes the scenario's record files up to the day `until`, a folder a practice.
 *
 * MEDLAR sends CSV, its motor's log NDJSON; QUINCE sends children before parents, exports some weeks twice, some
 * of them otherwise, and keeps upkeep in a workbook; SPINDLE sends CSV, its motor's log NDJSON.
 */
export async function writeFiles(folder: string, until: string): Promise<Delivery[]> {
  const deliveries: Delivery[] = [];
  for (const practice of practices) {
    const rows = makePractice(practice, until);
    const extra = practice.code === "QUINCE" ? exportedAgain(rows) : [];
    addMess(practice.code, rows, until);
    const own = join(folder, practice.code.toLowerCase());
    await mkdir(own, { recursive: true });
    const files = [];
    for (const { name, write } of [...filesOf(practice, rows), ...extra]) {
      const path = join(own, name);
      await write(path);
      files.push({ path, name });
    }
    deliveries.push({ practice, files });
  }
  return deliveries;
}

function filesOf({ code }: Practice, rows: Rows): File[] {
  const inBook: TableName[] = ["people", "upkeep", "exceptions", "incidents", "followups"];
  if (code === "QUINCE") {
    const cut: TableName[] = ["steps", "irrigation", "instruments", "canals", "sessions"];
    return [
      ...cut.map((table) => csv(table, rows[table])),
      workbook("upkeep-and-events.xlsx", rows, inBook),
    ];
  }
  const logged = rows.irrigation.filter((row) => row.basis === "metered");
  const noted = rows.irrigation.filter((row) => row.basis !== "metered");
  const plain: TableName[] = [
    "people",
    "sessions",
    "canals",
    "instruments",
    "steps",
    "exceptions",
    "incidents",
    "followups",
    "upkeep",
  ];
  return [
    ...plain.map((table) => csv(table, rows[table])),
    csv("irrigation", noted),
    ndjson("irrigation-motor-log.ndjson", logged),
  ];
}

/** A second export of some visits with the same cells, and one in which a few cells are different. */
function exportedAgain(rows: Rows): File[] {
  const visits = rows.sessions.slice(600, 618);
  const numbers = new Set(visits.map(({ session_id }) => session_id));
  const canals = rows.canals.filter(({ session_id }) => numbers.has(session_id));
  const differing = rows.canals.slice(2000, 2005).map(({ session_id, canal, preparation }) => ({
    session_id,
    canal,
    preparation,
    working_length_mm: 17.5,
  }));
  return [
    csv("sessions", visits, "sessions-again.csv"),
    csv("canals", canals, "canals-again.csv"),
    csv("canals", differing, "canals-corrected.csv"),
  ];
}

function csv(table: TableName, rows: readonly Row[], name = `${table}.csv`): File {
  const columns = columnsOf(table, rows);
  return {
    name,
    write: (path) => writeFile(path, stringify([...rows], { header: true, columns })),
  };
}

function ndjson(name: string, rows: readonly Row[]): File {
  return {
    name,
    write: (path) => writeFile(path, rows.map((row) => `${JSON.stringify(row)}\n`).join("")),
  };
}

function workbook(name: string, rows: Rows, names: readonly TableName[]): File {
  const sheets = names.map((table) => {
    const columns = columnsOf(table, rows[table]);
    return {
      sheet: table,
      data: [columns, ...rows[table].map((row) => columns.map((column) => row[column] ?? null))],
    };
  });
  return { name, write: (path) => writeWorkbook(sheets).toFile(path) };
}

/** The table's columns that some row bears; all of them where there is no row. */
function columnsOf(table: TableName, rows: readonly Row[]): string[] {
  const all = tables[table].columns.map(({ name }) => name);
  const used = all.filter((name) => rows.some((row) => row[name] !== undefined));
  return rows.length === 0 ? all : used;
}
