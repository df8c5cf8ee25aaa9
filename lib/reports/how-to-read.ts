import { extname } from "node:path";
import type { RecordsReach } from "@/lib/access/reach";
import { fits } from "@/lib/intake/mapping/fits";
import { type Mapping, mappingSchema } from "@/lib/intake/mapping/mapping";
import { readSheets } from "@/lib/intake/read-sheets";
import { openFile } from "@/lib/intake/recognise/open-file";
import type { Context } from "@/lib/intake/sheet";
import { UnreadableFile } from "@/lib/intake/unreadable-file";
import { keptMappings } from "@/lib/store/mappings";

/** A mapping by which files may be read; `version` is null where it is not a kept one. */
export type KnownMapping = { readonly mapping: Mapping; readonly version: number | null };

export type HowToRead =
  | { readonly as: "records" }
  | { readonly as: "mapped"; readonly by: KnownMapping }
  /** `why` goes on from "file: ". */
  | { readonly as: "unknown"; readonly why: string };

/** The kept mappings that are not retired, newest versions. */
export async function knownMappings(reach: RecordsReach): Promise<KnownMapping[]> {
  const kept = await keptMappings(reach);
  return kept
    .filter((one) => !one.retired)
    .map(({ definition, version }) => ({ mapping: mappingSchema.parse(definition), version }));
}

/**
 * How a file is to be read: by the mapping of its very shape, else as record files are, else by the only mapping all of whose
 * columns it has. Looks at the beginning alone. Where several mappings fit alike none is taken.
 */
export async function howToRead(
  file: { path: string; name: string },
  mappings: readonly KnownMapping[],
  context: Context,
): Promise<HowToRead> {
  const fitting = await fittingOf(file, mappings);
  const same = fitting.filter((one) => one.fit === "same");
  if (same.length > 0) return theOnly(same);
  const trouble = await whyNoRecords(file, context);
  if (trouble === undefined) return { as: "records" };
  if (fitting.length > 0) return theOnly(fitting);
  return { as: "unknown", why: trouble };
}

type Fitting = { readonly by: KnownMapping; readonly fit: "same" | "has all" };

function theOnly(fitting: readonly Fitting[]): HowToRead {
  const [only] = fitting;
  if (fitting.length === 1 && only) return { as: "mapped", by: only.by };
  const names = fitting.map(({ by }) => `"${by.mapping.name}"`).join(" and ");
  return {
    as: "unknown",
    why: `the mappings ${names} fit it alike; choose one, or retire the other.`,
  };
}

async function fittingOf(
  file: { path: string; name: string },
  mappings: readonly KnownMapping[],
): Promise<Fitting[]> {
  const fitting: Fitting[] = [];
  for (const by of mappings) {
    if (!kindsOf(file.name).includes(by.mapping.file.kind)) continue;
    const header = await headerUnder(file, by.mapping);
    const fit = header && fits(by.mapping, header);
    if (fit) fitting.push({ by, fit });
  }
  return fitting;
}

/** The header as a layout has it, or undefined where the file cannot be opened so. */
async function headerUnder(
  file: { path: string; name: string },
  mapping: Mapping,
): Promise<string[] | undefined> {
  try {
    const sheet = await openFile(file.path, file.name, mapping.file);
    await sheet?.close();
    return sheet && [...sheet.header];
  } catch (trouble) {
    if (trouble instanceof UnreadableFile) return undefined;
    throw trouble;
  }
}

function kindsOf(name: string): Mapping["file"]["kind"][] {
  const ending = extname(name).toLowerCase();
  if (ending === ".xlsx") return ["workbook"];
  if (ending === ".json") return ["json"];
  if (ending === ".ndjson" || ending === ".jsonl") return ["json-lines"];
  return ["separated", "json-lines"];
}

/** Why a file holds no table of the record format, in one sentence; undefined where it does. */
async function whyNoRecords(
  file: { path: string; name: string },
  context: Context,
): Promise<string | undefined> {
  try {
    for await (const _ of readSheets(file.path, file.name, context)) return undefined;
    return undefined;
  } catch (trouble) {
    if (trouble instanceof UnreadableFile) return trouble.what;
    throw trouble;
  }
}
