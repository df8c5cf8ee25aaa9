import { z } from "zod";
import type { RecordsReach } from "@/lib/access/reach";
import { type Mapping, mappingSchema } from "@/lib/intake/mapping/mapping";
import { keepMapping, mappingNamed, retireMapping } from "@/lib/store/mappings";
import { fieldWords } from "@/lib/views/mapping/field-words";
import { mappingAddress } from "@/lib/views/mapping/mapping-lines";
import { missingOf } from "@/lib/views/mapping/missing";
import { mappingTerms } from "./mapping-terms";
import { mappingOf, NoSuchMapping } from "./mappings-named";

type Refusal = { readonly wrong: { readonly form: string } };

const mostBytes = 4_000_000;

/** Keeps a mapping from its JSON file. */
export async function keepMappingFile(
  reach: RecordsReach,
  file: { readonly name: string; readonly size: number; text(): Promise<string> },
): Promise<{ done: string } | Refusal> {
  if (file.name === "" || file.size === 0) return refused("Choose the JSON file of a mapping.");
  if (file.size > mostBytes) return refused(`${file.name} is too large to be a mapping.`);
  let mapping: Mapping;
  try {
    mapping = mappingOf(file.name, await file.text());
  } catch (error) {
    if (error instanceof NoSuchMapping) return refused(error.message);
    throw error;
  }
  const { name, version } = await keepMapping(reach, mapping.name, mapping);
  return { done: `Kept as “${name}”, version ${version}.` };
}

/** Keeps a changed mapping as its next version and answers where it is. */
export async function keepChanged(
  reach: RecordsReach,
  text: string,
): Promise<{ address: string } | Refusal> {
  const parsed = z.string().max(mostBytes).parse(text);
  let mapping: Mapping;
  try {
    mapping = mappingOf("What was sent", parsed);
  } catch (error) {
    if (error instanceof NoSuchMapping) return refused(error.message);
    throw error;
  }
  const [missing] = missingOf(mapping, mappingTerms());
  if (missing) return refused(`Nothing feeds “${fieldWords(missing.field)}”, which is required.`);
  const { name } = await keepMapping(reach, mapping.name, mapping);
  return { address: mappingAddress(name) };
}

/** Files are no longer read by the mapping by themselves, or are again. */
export async function setRetired(
  reach: RecordsReach,
  name: string,
  retired: boolean,
): Promise<{ done: string } | Refusal> {
  if (!(await mappingNamed(reach, name))) return refused("There is no such mapping.");
  await retireMapping(reach, name, retired);
  return {
    done: retired
      ? "Retired: no file is read by it any more unless it is named."
      : "In use again: files of its shape are read by it.",
  };
}

/** A kept mapping as its JSON file; null where there is none. */
export async function mappingFile(
  reach: RecordsReach,
  name: string,
  version: number | undefined,
): Promise<{ text: string; filename: string } | null> {
  const kept = await mappingNamed(reach, name, version);
  if (!kept) return null;
  const safe = name.replace(/[^\p{L}\p{N}._ -]/gu, "-");
  return {
    // The database keeps no order of names; the schema's is the one to be read.
    text: `${JSON.stringify(mappingSchema.parse(kept.definition), null, 2)}\n`,
    filename: `${safe}.mapping.json`,
  };
}

function refused(sentence: string): Refusal {
  return { wrong: { form: sentence } };
}
