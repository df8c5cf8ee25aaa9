import { day } from "./day";
import { setShare } from "./quantity";

type Levels = { readonly look: number; readonly lookFirst: number };
type Chosen = Levels & { readonly reason: string; readonly by: string; readonly at: Date };

/** The levels of flags as the administrator reads them. */
export type LevelsView = {
  readonly look: string;
  readonly lookFirst: string;
  /** What they promise, and why these. */
  readonly promise: string;
  readonly reason: string;
  readonly mayChange: boolean;
  readonly fields: { readonly look: string; readonly lookFirst: string };
  readonly before: readonly { readonly id: string; readonly words: string }[];
};

/** @param chosen the latest first */
export function levelsView(
  standard: Levels,
  chosen: readonly Chosen[],
  mayChange: boolean,
): LevelsView {
  const [latest] = chosen;
  const inForce = latest ?? standard;
  return {
    look: setShare(inForce.look),
    lookFirst: setShare(inForce.lookFirst),
    promise: promiseOf(inForce),
    reason: latest
      ? `${latest.reason} (${latest.by}, ${day(latest.at.toISOString())})`
      : standardReason,
    mayChange,
    fields: { look: typed(inForce.look), lookFirst: typed(inForce.lookFirst) },
    before: [
      ...chosen.slice(1).map((one, place) => ({
        id: `${one.at.toISOString()} ${place}`,
        words: `${levelWords(one)}: ${one.reason} (${one.by}, ${day(one.at.toISOString())})`,
      })),
      ...(latest ? [{ id: "standard", words: `${levelWords(standard)}: ${standardReason}` }] : []),
    ],
  };
}

/** What a page of flags promises at these levels. */
export function promiseOf({ look, lookFirst }: Levels): string {
  return `Where nobody differs, at most ${pages(look)} show a look, and at most ${pages(lookFirst)} a look first.`;
}

const standardReason =
  "The shares that lie outside the 95 % and 99.8 % limits of a funnel plot (Spiegelhalter 2005), held for a whole page by the adjustment of Benjamini and Hochberg.";

function levelWords(levels: Levels): string {
  return `look under ${setShare(levels.look)}, look first under ${setShare(levels.lookFirst)}`;
}

/** 0.05 as "5 pages in 100", 0.002 as "2 pages in 1,000". */
function pages(share: number): string {
  const of = [100, 1_000, 10_000].find((all) => Number.isInteger(round(share * all))) ?? 10_000;
  const number = round(share * of);
  return `${number} ${number === 1 ? "page" : "pages"} in ${of.toLocaleString("en")}`;
}

function typed(share: number): string {
  return String(round(share * 100));
}

function round(value: number): number {
  return Number(value.toFixed(6));
}
