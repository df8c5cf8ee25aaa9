/**
 * Where a cell of the matrix leads: the records of its row that its column asks for, by outcome where one is named.
 * A cell says no more of its address than that, as there are a thousand cells.
 */
export function cellAddress(
  row: { readonly href: string },
  column: { readonly asks: string },
  cell: { readonly outcome?: string },
): string {
  return `${row.href}${column.asks}${cell.outcome ? `&outcome=${cell.outcome}` : ""}#records`;
}
