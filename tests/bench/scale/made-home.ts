import { existsSync } from "node:fs";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { type ImportRun, importOnce } from "../import-memory";
import { writeRecords } from "./write-records";

/** A home with records of about so many canals, and how it was filled. */
export type MadeHome = {
  readonly home: string;
  readonly files: readonly string[];
  readonly canals: number;
  readonly imported: ImportRun;
};

/** Makes the records and the home below the folder; where they lie there already they are taken as they are. */
export async function madeHome(folder: string, canals: number): Promise<MadeHome> {
  const noted = join(folder, `${canals}.json`);
  if (existsSync(noted)) return JSON.parse(await readFile(noted, "utf8"));
  console.error(`writing records of ${canals} canals`);
  const written = await writeRecords(join(folder, `records-${canals}`), canals);
  const files = written.files.map(({ path }) => path);
  console.error(`bringing ${written.rows} rows in`);
  // The home of a run is `home` below the folder that it is given.
  const place = join(folder, `${canals}`);
  const made: MadeHome = {
    home: join(place, "home"),
    files,
    canals: written.canals,
    imported: await importOnce(place, files),
  };
  await writeFile(noted, JSON.stringify(made));
  return made;
}
