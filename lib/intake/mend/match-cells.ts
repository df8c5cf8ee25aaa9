import type { Match } from "../sheet";

/** What finds the visit of a row, as cells of a held row, so that it is still there when the row is mended. */
export function matchCells(match: Match): Record<string, string> {
  return Object.fromEntries(
    Object.entries(match).map(([name, value]) => [`visit.${name}`, String(value)]),
  );
}

/** What finds the visit, from the cells of a held row; undefined where it names no time. */
export function matchIn(cells: Readonly<Record<string, string>>): Match | undefined {
  const at = cells["visit.at"];
  if (!at) return undefined;
  const named = (["practice", "chair", "until", "tooth"] as const).flatMap((name) => {
    const text = cells[`visit.${name}`];
    return text ? [[name, text]] : [];
  });
  return { at, ...Object.fromEntries(named), minutes: Number(cells["visit.minutes"] ?? 0) };
}
