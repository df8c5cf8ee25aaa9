import { type MaskedFigure, maskedFigure, maskedWhy } from "@/lib/audit/disclosure/masked-figure";
import type { RateFigure } from "@/lib/audit/figure";
import type { AdherenceLine } from "./adherence-line";
import type { CompositeRow } from "./composite";
import { subjectId } from "./subject-id";
import { subjectName } from "./subject-name";

/** A line of the report that is masked as a whole, and says so in each of its places. */
export type MaskedLine = Pick<
  AdherenceLine,
  "about" | "words" | "inTheseRecords" | "beyondChance"
> & {
  readonly masked: true;
  readonly figure: MaskedFigure;
  readonly eligible: null;
  readonly leftOut: null;
  readonly excepted: null;
};

const masked = "masked";

/** The line in place of a figure's own. */
export function maskedLine(figure: RateFigure): MaskedLine {
  return {
    masked: true,
    figure: maskedFigure(figure),
    about: subjectName(figure.about),
    ...{ eligible: null, leftOut: null, excepted: null },
    words: {
      ...{ population: masked, leftOut: masked, excepted: masked, eligible: masked },
      ...{ met: masked, notMet: masked, notRecorded: masked, counts: masked },
      ...{ rate: maskedWhy, interval: "", intervalEnds: masked, bounds: "" },
    },
    inTheseRecords: { mark: "missing", words: masked },
    beyondChance: { mark: "missing", words: masked },
  };
}

/** The row of both overall scores in place of their own. */
export function maskedScores({ about }: Pick<RateFigure, "about">): CompositeRow {
  const score = {
    ...{ estimate: maskedWhy, missing: true, interval: "" },
    ...{ counts: masked, notMet: masked },
  };
  return {
    id: `${about.kind} ${subjectId(about)}`,
    name: subjectName(about),
    whole: about.kind === "group",
    ...{ opportunities: score, visits: score },
  };
}
