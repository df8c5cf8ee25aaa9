import type { MaskedFigure } from "@/lib/audit/disclosure/masked-figure";
import type { Figure } from "@/lib/audit/figure";

/** A figure that may be masked, for what tells every number of a masked one as absent; the noughts are never read. */
export function maskedAsFigure(figure: Figure | MaskedFigure): Figure {
  if (figure.population !== null) return figure;
  const { beyondChance, inTheseRecords, ...masked } = figure;
  return {
    ...masked,
    ...{ population: 0, excluded: {}, excepted: {}, notRecorded: 0 },
    ...{ numerator: 0, denominator: 0, notMet: 0 },
  };
}
