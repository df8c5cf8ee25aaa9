/** The address of a list with its filters; what is undefined or empty is left out. */
export function listAddress(
  path: string,
  filters: Readonly<Record<string, string | undefined>>,
  part = "",
): string {
  const known = Object.entries(filters).filter((entry): entry is [string, string] =>
    Boolean(entry[1]),
  );
  const query = new URLSearchParams(known).toString();
  return `${path}${query ? `?${query}` : ""}${part}`;
}
