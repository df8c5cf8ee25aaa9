import type { Visit } from "../visit";

/** A motor drives preparations and instruments of this kind. */
export function isPowered(kind: unknown): boolean {
  return kind === "oscillating" || kind === "rotary" || kind === "reciprocating";
}

/** A motor was used at the visit: a canal was prepared with it, or an instrument of such a kind was used. */
export function isPoweredVisit({ canals, uses }: Visit): boolean {
  return (
    canals.some(({ row }) => isPowered(row.preparation)) || uses.some((u) => isPowered(u.kind))
  );
}
