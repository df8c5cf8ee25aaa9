/** Text that a spreadsheet would run as a formula gets an apostrophe before it; numbers stay as they are. */
export function csvField(value: string | number | null | undefined): string | number {
  if (value === null || value === undefined) return "";
  if (typeof value === "number") return value;
  return /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
}
