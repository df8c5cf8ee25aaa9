import type { Place } from "@/lib/measures/people-behind";

/** What a line is known by. */
export function lineKey(about: Place, period: string): string {
  return JSON.stringify([...partsOf(about), period]);
}

/** Does the first place hold the second. */
export function placeHolds(one: Place, other: Place): boolean {
  const inner = partsOf(other);
  return partsOf(one).every((part, at) => inner[at] === part);
}

function partsOf(about: Place): string[] {
  if (about.kind === "group") return [];
  return about.kind === "practice" ? [about.code] : [about.practice, about.code];
}
