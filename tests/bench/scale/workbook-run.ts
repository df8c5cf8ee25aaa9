import { createReadStream, existsSync } from "node:fs";
import { mkdir, rm } from "node:fs/promises";
import { join } from "node:path";
import { createInterface } from "node:readline";
import writeWorkbook from "write-excel-file/node";
import { importOnce } from "../import-memory";
import { writeDeliveries, writeVisits } from "../many-deliveries";

const rows = 200_000;

/** Imports one workbook of irrigation rows, its visits and canals brought in before it; how much memory the process took. */
export async function workbookRun(folder: string): Promise<{ rows: number; peakMb: number }> {
  await rm(folder, { recursive: true, force: true });
  await mkdir(folder, { recursive: true });
  const before = await writeVisits(folder, rows);
  const csv = await writeDeliveries(folder, rows);
  const book = join(folder, "irrigation.xlsx");
  const data: (string | number)[][] = [];
  for await (const line of createInterface({ input: createReadStream(csv) }))
    data.push(line.split(",").map((cell) => (/^\d+(\.\d+)?$/.test(cell) ? Number(cell) : cell)));
  await writeWorkbook([{ sheet: "irrigation", data }]).toFile(book);
  if (!existsSync(book)) throw new Error("the workbook was not written");
  await importOnce(folder, before);
  const { rows: taken, peakMb } = await importOnce(folder, [book]);
  return { rows: taken, peakMb };
}
