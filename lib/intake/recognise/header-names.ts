/** A longer name is a row of the table or a title; its beginning tells it from the others. */
const longestName = 120;

/**
 * The column names of a file of another system: blanks made one, Unicode's NFC, a name that comes twice numbered, an empty one named
 * by its place.
 */
export function headerNames(cells: readonly string[]): string[] {
  const names: string[] = [];
  const used = new Set<string>();
  for (const [place, cell] of cells.entries()) {
    const text = cell.normalize("NFC").replace(/\s+/g, " ").trim().slice(0, longestName).trim();
    const name = text || `column ${place + 1}`;
    let free = name;
    for (let number = 2; used.has(free.toLowerCase()); number += 1) free = `${name} (${number})`;
    used.add(free.toLowerCase());
    names.push(free);
  }
  return names;
}
