import type { List } from "@/lib/protocol/field";
import { taskWords } from "./code-words";
import type { OwnWords } from "./own-words";

/** How a list is spoken of: one item, several, and where they are. */
export type ListWords = { readonly one: string; readonly several: string; readonly where: string };

export function listWords(list: List, own: OwnWords): ListWords {
  if (list.name.startsWith("upkeep/"))
    return {
      one: "record",
      several: "records",
      where: ` of the ${taskWords(list.name.slice("upkeep/".length), own)}`,
    };
  return lists[list.name] ?? { one: list.item, several: `${list.item}s`, where: "" };
}

/** The list as a choice: "deliveries in the whole course". */
export function listName(list: List, own: OwnWords): string {
  const { several, where } = listWords(list, own);
  return `${several}${where}`;
}

const lists: Readonly<Record<string, ListWords>> = {
  deliveries: { one: "delivery", several: "deliveries", where: " at the visit" },
  course: { one: "delivery", several: "deliveries", where: " in the whole course" },
  uses: { one: "use of an instrument", several: "uses of instruments", where: "" },
  canals: { one: "canal", several: "canals", where: " of the visit" },
  gaps: {
    one: "criterion",
    several: "criteria",
    where: " for which evidence is missing",
  },
};
