import type { Mapping } from "@/lib/intake/mapping/mapping";
import { unusedColumns } from "@/lib/views/mapping/missing";

/** Names of columns that are likely to name a person. */
const personal =
  /patient|person|name\b|\bnom\b|pr[ée]nom|nombre|apellido|birth|\bdob\b|geb(urt|\.)|naissance|nacimiento|address|adress|anschrift|phone|telefon|mail|insur|versicher|chart ?n|\bakte/i;

/**
 * The columns of a file of which nothing is shown: those that feed the patient, and those that nothing reads and whose names say
 * that they name a person.
 */
export function hiddenColumns(draft: Mapping, columns: readonly string[]): Set<string> {
  const patient = draft.tables.flatMap(({ fields }) => {
    const feed = fields.patient;
    return feed && "columns" in feed ? feed.columns : [];
  });
  const unused = unusedColumns(draft, columns).filter((name) => personal.test(name));
  return new Set([...patient, ...unused]);
}
