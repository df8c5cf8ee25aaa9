/** The address of a measure's page, with its filters; what is undefined is left out. */
export function measureAddress(
  measure: string,
  filters: Readonly<Record<string, string | undefined>>,
  part = "",
): string {
  const known = Object.entries(filters).filter((entry): entry is [string, string] =>
    Boolean(entry[1]),
  );
  const query = new URLSearchParams(known).toString();
  return `/lead/measures/${measure}${query ? `?${query}` : ""}${part}`;
}

/** The address of a visit's page. */
export function visitAddress(practice: string, sessionId: string): string {
  return `/visits/${encodeURIComponent(practice)}/${encodeURIComponent(sessionId)}`;
}
