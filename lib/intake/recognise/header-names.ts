/** A longer name is a row of the table or a title; its beginning tells it from the others. */
const longestName = 120;

/**
 * The column names of a file of another system: blanks made one, Unicode's NFC, a name that comes twice numbered, an empty one named
 * by its place.
 */
export function headerNames(cells: readonly string[]): string[] {
  const names: string[] = [];
  const used = new Set<string>();
  const next = new Map<string, number>();
  for (const [place, cell] of cells.entries()) {
    const text = named(cell);
    // Every object has properties of some names, as constructor, which a row without that cell would seem to have.
    const name = text === "" || text in {} ? `column ${place + 1}` : text;
    let free = name;
    let number = next.get(name.toLowerCase()) ?? 2;
    for (; used.has(free.toLowerCase()); number += 1) free = `${name} (${number})`;
    next.set(name.toLowerCase(), number);
    used.add(free.toLowerCase());
    names.push(free);
  }
  return names;
}

/** Names are kept in mappings, and PostgreSQL takes neither NUL nor half of a surrogate pair. */
function named(cell: string): string {
  return cell
    .slice(0, 4 * longestName)
    .replace(/[\0\ufeff]|\p{Surrogate}/gu, "\ufffd")
    .normalize("NFC")
    .replace(/\s+/g, " ")
    .trim()
    .slice(0, longestName)
    .replace(/\p{Surrogate}$/u, "")
    .trim();
}
