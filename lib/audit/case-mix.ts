import type { Stratum } from "@/lib/measures/tally";
import { expectedFrom, standardisedRatio } from "@/lib/statistics/standardised-ratio";
import type { Figure, FigureInterval, RateFigure } from "./figure";
import { level } from "./level";

/** What a clinician's cases would have come to at the rates of all, and what they came to. */
export type Standardised = {
  readonly figure: RateFigure;
  readonly observed: number;
  readonly expected: number;
  /** Observed ÷ expected with its exact interval; null where nothing is expected. */
  readonly ratio: number | null;
  readonly interval: FigureInterval | null;
  /** Units that take part, and those in cells too thin to standardise. */
  readonly units: number;
  readonly leftOut: { readonly units: number; readonly events: number; readonly cells: number };
  /** The clinician's share of the units that everybody is compared with. */
  readonly share: number;
};

export type CaseMix = {
  readonly standardised: readonly Standardised[];
  /** Every cell of all shown together, the largest first. */
  readonly cells: readonly RateFigure[];
};

/**
 * Indirect standardisation over the cells of the case: the reference is everyone shown, the clinician included, so that
 * observed and expected have the same sum. A cell with under 20 units, or with nobody else's, is left out of both.
 * @param figures of one measure by group and clinician, told apart by case; `whole` the clinicians' figures as they are
 */
export function caseMixOf(figures: readonly Figure[], whole: readonly RateFigure[]): CaseMix {
  const apart = figures.filter(
    (figure): figure is RateFigure => figure.kind === "rate" && figure.stratum?.by === "case",
  );
  const cells = apart
    .filter((figure) => figure.about.kind === "group" && figure.denominator > 0)
    .sort((one, other) => other.denominator - one.denominator);
  const all = cells.reduce((sum, cell) => sum + cell.denominator, 0);
  const reference = new Map(cells.map((cell) => [nameOf(cell.stratum), cell]));
  const own = cellsByClinician(apart);
  return {
    cells,
    standardised: whole
      .filter((figure) => figure.denominator > 0)
      .map((figure) => {
        const { about } = figure;
        const cellsOf = about.kind === "clinician" ? (own.get(about.key) ?? []) : [];
        return standardised(figure, cellsOf, reference, all);
      }),
  };
}

function standardised(
  figure: RateFigure,
  own: readonly RateFigure[],
  reference: ReadonlyMap<string, RateFigure>,
  all: number,
): Standardised {
  const { expected, used, leftOut } = expectedFrom(
    own.map((cell) => {
      const of = reference.get(nameOf(cell.stratum));
      return {
        units: cell.denominator,
        referenceEvents: of?.numerator ?? 0,
        referenceUnits: of?.denominator ?? 0,
      };
    }),
  );
  const events = (taking: boolean) =>
    own.reduce((sum, cell, place) => sum + (used[place] === taking ? cell.numerator : 0), 0);
  const observed = events(true);
  const found = standardisedRatio(observed, expected, level);
  const units = own.reduce((sum, cell) => sum + cell.denominator, 0);
  return {
    figure,
    observed,
    expected,
    ratio: found?.ratio ?? null,
    interval: found?.interval ?? null,
    units: units - leftOut.units,
    leftOut: { units: leftOut.units, events: events(false), cells: leftOut.strata },
    share: all === 0 ? 0 : units / all,
  };
}

function cellsByClinician(figures: readonly RateFigure[]): Map<string, RateFigure[]> {
  const found = new Map<string, RateFigure[]>();
  for (const figure of figures) {
    if (figure.about.kind !== "clinician" || figure.denominator === 0) continue;
    const { key } = figure.about;
    const same = found.get(key);
    if (same) same.push(figure);
    else found.set(key, [figure]);
  }
  return found;
}

function nameOf(stratum: Stratum | undefined): string {
  if (stratum?.by !== "case") return "";
  return [stratum.tooth, stratum.curvature, stratum.treatment].join("\n");
}
