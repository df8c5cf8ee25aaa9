/** So many columns of counts fit a landscape A4 sheet beside the two that every block repeats. */
const mostColumns = 8;

/** Columns shared out over as few blocks as fit, about as many in each; one empty block where there are none. */
export function columnBlocks(columns: number): { readonly from: number; readonly until: number }[] {
  const blocks = Math.max(1, Math.ceil(columns / mostColumns));
  return Array.from({ length: blocks }, (_, place) => ({
    from: Math.round((place * columns) / blocks),
    until: Math.round(((place + 1) * columns) / blocks),
  }));
}
