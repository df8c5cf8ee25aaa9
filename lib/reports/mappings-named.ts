import { readFile } from "node:fs/promises";
import type { z } from "zod";
import type { RecordsReach } from "@/lib/access/reach";
import { type Mapping, mappingSchema } from "@/lib/intake/mapping/mapping";
import { keptMappings, mappingNamed } from "@/lib/store/mappings";
import type { KnownMapping } from "./how-to-read";

/** No mapping of that name, or a file that is none; the sentence is for whoever named it. */
export class NoSuchMapping extends Error {
  override readonly name = "NoSuchMapping";
}

/**
 * The mappings that a command names: kept ones by name, others by the path of their JSON file.
 *
 * @param pathOf a name as a path of the caller's folder
 * @throws NoSuchMapping
 */
export async function mappingsNamed(
  reach: RecordsReach,
  names: readonly string[],
  pathOf: (name: string) => string,
): Promise<KnownMapping[]> {
  const found: KnownMapping[] = [];
  for (const name of names) {
    const kept = await mappingNamed(reach, name);
    if (kept) found.push({ mapping: mappingSchema.parse(kept.definition), version: kept.version });
    else if (name.toLowerCase().endsWith(".json"))
      found.push({ mapping: await mappingFile(name, pathOf(name)), version: null });
    else throw new NoSuchMapping(`There is no mapping "${name}"; ${await keptNames(reach)}.`);
  }
  return found;
}

/** A mapping as it was written into a file. @throws NoSuchMapping */
async function mappingFile(name: string, path: string): Promise<Mapping> {
  const text = await readFile(path, "utf8").catch(() => null);
  if (text === null) throw new NoSuchMapping(`There is no mapping file ${name}.`);
  return mappingOf(name, text);
}

/**
 * A mapping from its JSON text.
 *
 * @throws NoSuchMapping with every place that is wrong
 */
export function mappingOf(name: string, text: string): Mapping {
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\ufeff/, ""));
  } catch {
    throw new NoSuchMapping(`${name} is no JSON; is it whole?`);
  }
  const read = mappingSchema.safeParse(json);
  if (read.success) return read.data;
  throw new NoSuchMapping(`${name} is no mapping: ${wrongPlaces(read.error)}.`);
}

function wrongPlaces(error: z.ZodError): string {
  const places = error.issues.slice(0, 5).map(({ path, message }) => {
    const where = path.length === 0 ? "the whole" : path.map(String).join(" › ");
    return `${where}: ${message}`;
  });
  const more = error.issues.length > 5 ? [`and ${error.issues.length - 5} more`] : [];
  return [...places, ...more].join("; ");
}

async function keptNames(reach: RecordsReach): Promise<string> {
  const kept = (await keptMappings(reach)).filter((one) => !one.retired);
  return kept.length === 0
    ? "none is kept yet; name a JSON file, or make one on the page Records"
    : `those kept are ${kept.map((one) => `"${one.name}"`).join(", ")}`;
}
