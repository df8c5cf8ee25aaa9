import type { Locator } from "@playwright/test";

/** The rows of a table's body, each as its cells' words by the column's head; a shut fold is read as well. */
export async function tableRows(table: Locator): Promise<Record<string, string>[]> {
  return table.evaluate((element) => {
    const words = (cell: Element) => (cell.textContent ?? "").replace(/[ \n\t]+/g, " ").trim();
    const heads = [...element.querySelectorAll("thead tr:last-child > *")].map(words);
    return [...element.querySelectorAll("tbody tr")].map((row) =>
      Object.fromEntries([...row.children].map((cell, place) => [heads[place] ?? "", words(cell)])),
    );
  });
}

/** The rows of the table under the first chart within, which is drawn when it is opened. */
export async function chartTable(within: Locator): Promise<Record<string, string>[]> {
  const fold = within.locator("details", { hasText: "As a table" }).first();
  await fold.locator("summary").click();
  return tableRows(fold.locator("table"));
}

/** The words of an element, whether they are folded away or not. */
export async function wordsOf(element: Locator): Promise<string> {
  return ((await element.textContent()) ?? "").replace(/[ \n\t]+/g, " ").trim();
}

/** The first whole number of the words, with a thin space between thousands. */
export function firstNumber(words: string | undefined): number {
  const found = /\d[\d\u202f]*/.exec(words ?? "");
  if (!found) throw new Error(`There is no number in "${words}".`);
  return Number(found[0].replaceAll(/\D/g, ""));
}
