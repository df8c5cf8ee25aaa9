import { gathered } from "../batched";
import { refuseManyColumns } from "../most-columns";
import type { RawRow, RawSheet } from "../raw-row";
import { jsonItemRows, jsonLineRows } from "../read-json";
import { headerNames } from "./header-names";

/**
 * The rows of a JSON file under the names that it gives them, as a stream. It is looked through for its names first, as objects
 * leave out what they do not have. Undefined where it has no rows.
 */
export async function openJson(
  path: string,
  name: string,
  kind: "json" | "json-lines",
): Promise<RawSheet | undefined> {
  const read = () =>
    kind === "json" ? jsonItemRows(path, name, (key) => key) : jsonLineRows(path, (key) => key);
  const keys = new Set<string>();
  let any = false;
  for await (const { cells } of read()) {
    any = true;
    for (const key in cells) keys.add(key);
    refuseManyColumns(keys.size, name);
  }
  if (!any) return undefined;
  const header = headerNames([...keys]);
  const names = new Map([...keys].map((key, place) => [key, header[place] as string]));
  const rows = [...names].every(([key, own]) => key === own) ? read() : renamed(read(), names);
  return {
    name,
    title: name,
    header,
    rows: gathered(rows),
    close: async () => void (await rows.return(undefined)),
  };
}

async function* renamed(
  rows: AsyncGenerator<RawRow>,
  names: ReadonlyMap<string, string>,
): AsyncGenerator<RawRow> {
  const nameOf = (key: string) => names.get(key) ?? key;
  for await (const row of rows) {
    const cells: Record<string, string> = {};
    for (const [key, text] of Object.entries(row.cells)) cells[nameOf(key)] = text;
    const troubles = row.troubles?.map((one) =>
      one.column === undefined ? one : { ...one, column: nameOf(one.column) },
    );
    yield { ...row, cells, ...(troubles ? { troubles } : {}) };
  }
}
