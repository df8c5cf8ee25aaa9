/** Where a criterion of a practice's protocol is shown, or with `/change` edited. */
export function criterionAddress(id: string, practice: string, end: "" | "/change" = ""): string {
  return `/protocol/${encodeURIComponent(id)}${end}${practice ? `?practice=${encodeURIComponent(practice)}` : ""}`;
}
