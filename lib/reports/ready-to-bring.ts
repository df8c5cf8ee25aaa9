import type { Mapping } from "@/lib/intake/mapping/mapping";
import type { Recognised } from "@/lib/intake/recognise/recognised";
import type { KeptMapping } from "@/lib/store/mappings";
import type { WaitingFile } from "@/lib/store/waiting";
import { canonicalJson } from "@/lib/views/canonical-json";
import { doubtsOf } from "@/lib/views/mapping/doubts";
import { fieldWords } from "@/lib/views/mapping/field-words";
import { missingOf } from "@/lib/views/mapping/missing";
import { columnFacts } from "./column-facts";
import { readDraft } from "./mapping-draft";
import { mappingTerms } from "./mapping-terms";
import { isTested } from "./mapping-test";

/** May a file be brought in by its draft; else what is still to be done, in one sentence. */
export type Readiness =
  | { readonly mapping: Mapping; readonly keptAs: number | null }
  | { readonly todo: string };

/**
 * A file may be brought in once every required field is fed, every question answered, and the very draft was tested on the whole
 * file; a kept mapping that is used as it is needs no test.
 *
 * @param kept the newest versions of all kept mappings
 */
export function readiness(file: WaitingFile, kept: readonly KeptMapping[]): Readiness {
  const recognised = file.recognised as Recognised | null;
  const read = readDraft(file.draft);
  if (!recognised || !("draft" in read)) return { todo: "It has no mapping yet." };
  const { draft } = read;
  if (draft.tables.length === 0) return { todo: "Say first which table it feeds." };
  const terms = mappingTerms();
  const [missing] = missingOf(draft, terms);
  const facts = recognised.columns.map(columnFacts);
  const doubts = doubtsOf(draft, facts, terms, recognised.decimalUnsettled !== null);
  if (doubts.length > 0) return { todo: "A question about it is not answered yet." };
  if (missing)
    return { todo: `Nothing feeds “${fieldWords(missing.field)}” yet, which is required.` };
  if (draft.name.trim() === "") return { todo: "Its mapping has no name yet." };
  const mapping = { ...draft, name: draft.name.trim() };
  const same = kept.find(({ name }) => name === mapping.name);
  const isKept = same !== undefined && canonicalJson(same.definition) === canonicalJson(mapping);
  if (!isKept && !isTested(file, draft))
    return { todo: "Its mapping is to be tested on the whole file." };
  return { mapping, keptAs: isKept ? same.version : null };
}
