import type { Canal, Visit } from "./visit";

/** Why a canal is outside the treatment population, by the first reason that applies. */
export function canalExclusion(visit: Visit, canal: Canal): string | undefined {
  return visitReason(visit) ?? (isPrepared(canal) ? undefined : "not-prepared");
}

/** The same of a visit as a whole: it is in where any of its canals was prepared. */
export function visitExclusion(visit: Visit): string | undefined {
  return visitReason(visit) ?? (visit.canals.some(isPrepared) ? undefined : "not-prepared");
}

function visitReason({ session }: Visit): string | undefined {
  if (session.outcome === "abandoned") return "abandoned";
  if (session.treatment !== "primary" && session.treatment !== "retreatment") {
    return String(session.treatment);
  }
  return undefined;
}

function isPrepared(canal: Canal): boolean {
  return canal.row.preparation !== "none";
}
