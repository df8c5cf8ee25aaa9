import type { Figure } from "@/lib/audit/figure";
import type { PageFlags } from "@/lib/audit/flagged";
import type { IntervalRow } from "./chart-rows";
import {
  couldHaveBeenSeen,
  flagMark,
  flagWords,
  howToLook,
  notAssessableWords,
  promiseWords,
} from "./flag-words";
import { inOrderOfCodes, rowLabel } from "./interval-chart";
import { measureAddress } from "./lead-address";
import { titleOf } from "./measure-words";
import { toldApart } from "./told-apart";

/** What stands out among all clinicians' rates of a page, and what could have been seen of the others. */
export type BeyondChance = {
  readonly flags: readonly { readonly words: string; readonly href: string }[];
  readonly howToLook: string;
  readonly promise: string;
  /** Which figures take no part; null where all do. */
  readonly notAssessable: string | null;
  /** Every rate that is not flagged, by measure, and how many there are. */
  readonly quiet: {
    readonly count: number;
    readonly measures: readonly { readonly title: string; readonly lines: readonly QuietLine[] }[];
  };
};

/** Whose rate it is, and what could have been seen of it; a pair, as there are a thousand. */
export type QuietLine = readonly [name: string, words: string];

/** In the order of measures and codes, never of values. */
export function beyondChance(
  page: PageFlags,
  filters: Readonly<Record<string, string | undefined>>,
): BeyondChance {
  const measures = [...new Set(page.flagged.map(({ figure }) => figure.measure))];
  const inOrder = measures.flatMap((measure) =>
    inOrderOfCodes(
      page.flagged.map(({ figure }) => figure).filter((figure) => figure.measure === measure),
    ).flatMap((figure) => page.flagged.filter((one) => one.figure === figure)),
  );
  const nameOf = toldApart(
    [...inOrder.map(({ figure }) => figure), ...page.notAssessable],
    (figure) => rowLabel(figure.about),
  );
  const quiet = inOrder.filter(({ flag }) => flag.tier === null);
  return {
    howToLook,
    notAssessable: notAssessableWords(page.notAssessable, nameOf),
    promise: promiseWords(page),
    flags: inOrder
      .filter(({ flag }) => flag.tier !== null)
      .map((one) => ({
        words: flagWords(one, nameOf(one.figure)),
        href: measureAddress(one.figure.measure, spanOf(one.figure, filters), "#chance"),
      })),
    quiet: {
      count: quiet.length,
      measures: measures.flatMap((measure) => {
        const its = quiet.filter(({ figure }) => figure.measure === measure);
        const [first] = its;
        if (!first) return [];
        const lines = its.map((one) => [nameOf(one.figure), couldHaveBeenSeen(one)] as const);
        return [{ title: titleOf(first.figure), lines }];
      }),
    },
  };
}

/** What was compared in the chosen period itself is looked at in it, and not on the four quarters that few units open on. */
function spanOf(
  figure: Figure,
  filters: Readonly<Record<string, string | undefined>>,
): Readonly<Record<string, string | undefined>> {
  return figure.period === filters.period ? { ...filters, span: "quarter" } : filters;
}

/** The mark of a figure among the page's flags; null where it has none. */
export function flagOf(page: PageFlags, figure: Figure): IntervalRow["flag"] | null {
  const one = page.flagged.find((flagged) => flagged.figure === figure);
  return one ? flagMark(one.flag.tier) : null;
}
