import type { Figure, RateFigure } from "@/lib/audit/figure";
import type { Flagged, PageFlags } from "@/lib/audit/flagged";

/** The flags of a page that can be written down: figures by their place in a list. */
export type FrozenFlags = Omit<PageFlags, "flagged" | "notAssessable"> & {
  readonly flagged: readonly (Omit<Flagged, "figure"> & { readonly figure: number })[];
  readonly notAssessable: readonly number[];
};

/** Flags with the places of their figures in the list that they were raised from. */
export function frozenFlags(flags: PageFlags, figures: readonly Figure[]): FrozenFlags {
  return {
    ...flags,
    flagged: flags.flagged.map((one) => ({ ...one, figure: figures.indexOf(one.figure) })),
    notAssessable: flags.notAssessable.map((figure) => figures.indexOf(figure)),
  };
}

/** The same with the figures themselves. */
export function thawedFlags(flags: FrozenFlags, figures: readonly Figure[]): PageFlags {
  const rate = (place: number): RateFigure => {
    const figure = figures[place];
    if (figure?.kind !== "rate") throw new RangeError(`no rate stands at ${place}`);
    return figure;
  };
  return {
    ...flags,
    flagged: flags.flagged.map((one) => ({ ...one, figure: rate(one.figure) })),
    notAssessable: flags.notAssessable.map(rate),
  };
}
