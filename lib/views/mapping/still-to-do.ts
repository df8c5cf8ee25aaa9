import type { MappingDraft } from "./draft";
import { fieldWords } from "./field-words";
import { missingOf } from "./missing";
import type { Question } from "./questions";
import { tableHeading } from "./table-names";
import type { TableTerms } from "./terms";

/** Something that has to be done before a file is brought in by a draft, and the path of what it is done at. */
export type Todo = { readonly words: string; readonly at: readonly (string | number)[] };

/** What has to be done, in the order of the page. */
export function stillToDo(
  draft: MappingDraft,
  terms: readonly TableTerms[],
  questions: readonly Question[],
  decimalUnsettled: boolean,
): Todo[] {
  const missing = missingOf(draft, terms).filter(
    // The question about the notation stands for it.
    ({ table, field }) =>
      !questions.some(({ at }) => at.some((one) => one.table === table && one.field === field)),
  );
  return [
    ...(decimalUnsettled
      ? [{ words: "Say which decimal mark the file has", at: ["decimal-question"] }]
      : []),
    ...questions.flatMap(({ given, column }, number) =>
      given === ""
        ? [{ words: `Answer the question about “${column}”`, at: ["question", number] }]
        : [],
    ),
    ...(draft.tables.length === 0
      ? [{ words: "Say which table it feeds", at: ["more-tables"] }]
      : []),
    ...missing.map(({ table, field }) => ({
      words: `${tableHeading(draft.tables[table]?.table ?? "")}: feed “${fieldWords(field)}”`,
      at: ["tables", table, "fields", field],
    })),
    ...(draft.name.trim() === "" ? [{ words: "Give the mapping a name", at: ["name"] }] : []),
  ];
}
