/** Where one visit is shown. */
export function visitAddress(practice: string, sessionId: string): string {
  return `/visits/${encodeURIComponent(practice)}/${encodeURIComponent(sessionId)}`;
}
