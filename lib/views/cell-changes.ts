type Cells = Readonly<Record<string, string>>;

/** The cells in which a row changed; the patient is not told. */
export function cellChanges(
  before: Cells,
  after: Cells,
): { readonly column: string; readonly old: string; readonly newer: string }[] {
  return [...new Set([...Object.keys(before), ...Object.keys(after)])]
    .filter((column) => before[column] !== after[column])
    .map((column) => ({
      column,
      old: shown(column, before[column]),
      newer: shown(column, after[column]),
    }));
}

function shown(column: string, text: string | undefined): string {
  if (text === undefined || text === "") return "nothing";
  return column === "patient" ? "a pseudonym" : text;
}
