import type { FileLayout } from "@/lib/intake/mapping/file-layout";
import { type Mapping, mappingSchema } from "@/lib/intake/mapping/mapping";
import { sourceUnits } from "@/lib/intake/mapping/source-units";
import { tableNames, tables } from "@/lib/records/tables";
import { fuzzCells, pick, type Random, upTo } from "./fuzz-files";

/** A mapping that need not make sense, of a file with this header, to one table. */
export function fuzzMapping(random: Random, file: FileLayout, header: readonly string[]): Mapping {
  const table = pick(random, tableNames);
  const fields: Mapping["tables"][number]["fields"] = {};
  for (const { name } of tables[table].columns) {
    const kind = random();
    if (kind < 0.5) fields[name] = feedOf(random, header);
    else if (kind < 0.7) fields[name] = { always: pick(random, fuzzCells) || "x" };
    else if (name === "seq") fields[name] = { numbered: true };
  }
  if (random() < 0.3 && tables[table].parent) fields["visit.at"] = feedOf(random, header);
  const mapping = { format: "canal-audit-mapping-1", name: "random", file, columns: header };
  return mappingSchema.parse({
    ...mapping,
    tables: [{ table, minutes: upTo(random, 60), fields }],
  });
}

function feedOf(random: Random, header: readonly string[]) {
  const some = <Item>(items: readonly Item[]) => (random() < 0.4 ? pick(random, items) : undefined);
  const day = ["year-month-day", "day-month-year", "month-day-year", "unix-s", "unix-ms"] as const;
  const clock = some(day);
  const unit = some(sourceUnits);
  const word = pick(random, [...fuzzCells.slice(1), "Hypochlorit {number} %", "{number}"]);
  return {
    columns: [pick(random, header), ...(random() < 0.2 ? [pick(random, header)] : [])],
    ...(random() < 0.5
      ? { words: [{ word, means: pick(random, ["naocl", "{number}", "MB", null]) }] }
      : {}),
    ...(unit ? { unit } : {}),
    ...(clock ? { clock: { day: clock, hours: pick(random, [24, 12] as const) } } : {}),
  };
}
