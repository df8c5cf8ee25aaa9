/** Rows gathered under a key, in the order in which the keys first come. */
export function byKey<Row>(rows: readonly Row[], keyOf: (row: Row) => string): Map<string, Row[]> {
  const found = new Map<string, Row[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const some = found.get(key);
    if (some) some.push(row);
    else found.set(key, [row]);
  }
  return found;
}
