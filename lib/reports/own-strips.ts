import type { OwnReach } from "@/lib/access/reach";
import type { Comparison } from "@/lib/audit/comparison";
import type { MedianFigure } from "@/lib/audit/figure";
import type { Period } from "@/lib/records/period";
import { ownEnds, ownSpread } from "@/lib/store/figures/own-spread";
import { type OwnStrip, ownStrip, ratePlot, spreadBins, spreadRow } from "@/lib/views/own-strip";
import type { OwnFigure } from "./own-figures";

/** The strips of the clinician's measures, in the order given, with their units as they are spread. */
export async function ownStrips(
  reach: OwnReach,
  period: Period,
  own: readonly OwnFigure[],
): Promise<OwnStrip[]> {
  const ends = await ownEnds(
    reach,
    own.map(({ figure }) => figure.measure),
    period,
  );
  const drawn = ends.flatMap(({ measure, lowest, highest }) => {
    const one = own.find(({ figure }) => figure.measure === measure);
    return one ? [spreadBins(measure, lowest, highest, one.comparison)] : [];
  });
  const spread = await ownSpread(
    reach,
    period,
    drawn.map(({ bins }) => bins),
  );
  return own.map(({ figure, comparison, note }) => {
    if (figure.kind === "rate")
      return ownStrip(figure, comparison, note, {
        spread: null,
        plot: ratePlot(figure, comparison),
      });
    const drawing = drawn.find(({ bins }) => bins.measure === figure.measure);
    return ownStrip(figure, comparison, note, {
      plot: null,
      spread: drawing ? rowOf(figure, comparison, drawing, spread) : null,
    });
  });
}

function rowOf(
  figure: MedianFigure,
  comparison: Comparison,
  drawing: ReturnType<typeof spreadBins>,
  spread: Map<string, number[]>,
) {
  return spreadRow(
    figure,
    comparison,
    drawing.axis,
    drawing.bins.width,
    spread.get(figure.measure) ?? [],
  );
}
