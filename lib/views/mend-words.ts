/** What a mend does, as it is kept. */
type Change = {
  readonly to?: string;
  readonly from?: string;
  readonly none?: true;
  readonly point?: true;
};

/** What a mend does, column by column: "irrigant: “bleech” becomes “naocl”". */
export function changeWords(changes: unknown): string {
  return Object.entries((changes ?? {}) as Record<string, Change>)
    .map(([column, change]) => `${column}: ${one(column, change)}`)
    .join("; ");
}

function one(column: string, { to, from, none, point }: Change): string {
  if (point) return "the decimal comma becomes a point";
  if (column === "patient") return "the reference was written anew";
  const was = from === undefined ? "" : from === "" ? "nothing " : `“${from}” `;
  return none ? `${was}becomes not recorded` : `${was}becomes “${to ?? ""}”`;
}
