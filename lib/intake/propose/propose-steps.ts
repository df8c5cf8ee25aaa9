import type { TableFeed } from "../mapping/mapping";
import type { ColumnProfile } from "../recognise/recognised";
import { comparable, stepNames } from "./column-names";
import type { ColumnsByField } from "./columns-by-name";
import { stepWords } from "./propose-words";

/** A table of steps for each column that says whether one was done; an empty cell is for a person to explain. */
export function stepFeeds(
  columns: readonly ColumnProfile[],
  visit: ColumnsByField,
): { feed: TableFeed; why: string }[] {
  const session = visit.get("session_id");
  const practice = visit.get("practice");
  if (!session) return [];
  return Object.entries(stepNames).flatMap(([step, name]) => {
    const column = columns.find((one) => name.test(comparable(one.name)));
    if (!column) return [];
    const words = stepWords(column);
    if (words.length === 0) return [];
    const feed: TableFeed = {
      table: "steps",
      fields: {
        session_id: { columns: [session.name] },
        ...(practice ? { practice: { columns: [practice.name] } } : {}),
        step: { always: step },
        status: { columns: [column.name], words },
      },
    };
    const open = column.words.filter(({ text }) => !words.some(({ word }) => word === text));
    const others = open.slice(0, 3).map(({ text }) => `"${text}"`);
    const asked = [...(column.empty > 0 ? ["an empty cell"] : []), ...others];
    const why = `By its name, "${column.name}".${asked.length > 0 ? ` Say what ${asked.join(", ")} means.` : ""}`;
    return [{ feed, why }];
  });
}
