import type { Comparison } from "@/lib/audit/comparison";
import type { Figure } from "@/lib/audit/figure";
import { lowerIsBetter } from "@/lib/audit/nearest-seen";
import { seenAgainst } from "@/lib/audit/seen-against";
import { shortName } from "./own-comparison";
import { percent } from "./quantity";

/**
 * What so many units of the clinician's would have shown against the rate they are compared with: no page says that
 * there is nothing to see without it. Null of a median, and where it cannot be told.
 */
export function ownSeen(figure: Figure, comparison: Comparison): string | null {
  if (figure.kind === "median" || comparison.estimate === null) return null;
  const seen = seenAgainst(figure, comparison);
  if (seen === undefined) return null;
  const [more, higher] = lowerIsBetter(figure.measure) ? ["more", "higher"] : ["less", "lower"];
  const against = `the ${percent(comparison.estimate)} of ${nameOf(comparison)}`;
  return seen === null
    ? `What could have been seen: with so few units no ${higher} true rate would have been told from ${against} four times in five.`
    : `What could have been seen: a true rate of ${percent(seen)} or ${more} would have been told from ${against} four times in five.`;
}

function nameOf(comparison: Comparison): string {
  return comparison.kind === "practice" ? "the practice" : shortName(comparison);
}
