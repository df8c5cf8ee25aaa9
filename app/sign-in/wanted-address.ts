/**
 * Where a sign-in leads: `to`, with the other parameters that were beside it. Only a path of this site is
 * followed, so that a link to the sign-in cannot lead elsewhere; anything else is the viewer's home.
 */
export function wantedAddress(
  given: Readonly<Record<string, string | string[] | undefined>>,
): string {
  const { to, ...rest } = given;
  if (typeof to !== "string" || !isOwnPath(to)) return "/";
  const kept = new URLSearchParams();
  for (const [name, value] of Object.entries(rest)) {
    for (const one of [value ?? []].flat()) kept.append(name, one);
  }
  if (kept.size === 0) return to;
  return `${to}${to.includes("?") ? "&" : "?"}${kept}`;
}

/** Neither //elsewhere nor /\elsewhere, which browsers read as another host; nor the sign-in itself. */
function isOwnPath(path: string): boolean {
  return /^\/(?![/\\])[^\\\s]*$/.test(path) && !path.startsWith("/sign-in");
}
