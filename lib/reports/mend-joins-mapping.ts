import type { RecordsReach } from "@/lib/access/reach";
import { type Mapping, mappingSchema } from "@/lib/intake/mapping/mapping";
import { alike } from "@/lib/intake/mapping/words";
import { tables } from "@/lib/records/tables";
import { keepMapping, mappingNamed } from "@/lib/store/mappings";
import { mappingsOfHeld } from "@/lib/store/mend/mappings-of-held";
import type { AskedMend } from "./asked-mend";
import { joinsMappings } from "./mendable";

/** A rule in a mapping's words: in this column this word means that; null is not recorded. */
type Rule = { readonly column: string; readonly word: string; readonly means: string | null };

/**
 * The mappings, newest versions, that the rule of a mend can join, so that the next file is right by itself: those that read the rows, where
 * a column of the file feeds the field with words.
 */
export async function mappingsToJoin(reach: RecordsReach, mend: AskedMend): Promise<Mapping[]> {
  const rule = ruleOf(mend);
  if (!rule) return [];
  const names = (await mappingsOfHeld(reach, { ...mend.asked, state: "held" })).map(
    ({ name }) => name,
  );
  const found: Mapping[] = [];
  for (const name of new Set(names)) {
    const kept = await mappingNamed(reach, name);
    const read = kept && mappingSchema.safeParse(kept.definition);
    if (read?.success && withRule(read.data, mend.asked.table, rule)) found.push(read.data);
  }
  return found;
}

/** Keeps the mapping with the rule as its next version. @returns what it is called now */
export async function addToMapping(
  reach: RecordsReach,
  mapping: Mapping,
  mend: AskedMend,
): Promise<string> {
  const rule = ruleOf(mend);
  const next = rule && withRule(mapping, mend.asked.table, rule);
  if (!next) throw new Error("only a mapping that can take the rule is offered");
  const { name, version } = await keepMapping(reach, mapping.name, next);
  return `${name}, version ${version}`;
}

function ruleOf({ asked, column, kept }: AskedMend): Rule | undefined {
  const change = kept[column];
  const field = tables[asked.table].columns.find(({ name }) => name === column);
  if (!field || !change || "point" in change || !joinsMappings(field)) return undefined;
  if (change.from === undefined || change.from === "" || change.from.endsWith("…"))
    return undefined;
  return { column, word: change.from, means: "none" in change ? null : change.to };
}

/** The mapping with the word in the feed of that field; undefined where no column of the file feeds it. */
function withRule(
  mapping: Mapping,
  table: string,
  { column, word, means }: Rule,
): Mapping | undefined {
  let joined = false;
  const changed = mapping.tables.map((feed) => {
    const field = feed.fields[column];
    if (feed.table !== table || !field || !("columns" in field)) return feed;
    joined = true;
    const words = (field.words ?? []).filter((one) => alike(one.word) !== alike(word));
    return {
      ...feed,
      fields: { ...feed.fields, [column]: { ...field, words: [...words, { word, means }] } },
    };
  });
  const read = joined ? mappingSchema.safeParse({ ...mapping, tables: changed }) : undefined;
  return read?.success ? read.data : undefined;
}
