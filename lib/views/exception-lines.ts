import type { AdherenceCriterion } from "./adherence-report";
import { unitName } from "./measure-words";
import { ownReasonWords } from "./protocol/code-words";
import type { OwnWords } from "./protocol/own-words";
import { count, percent } from "./quantity";

/** Units of a criterion that were rightly not met, by the coded reason. */
export type ExceptionLine = {
  readonly id: string;
  readonly criterion: string;
  readonly about: string;
  readonly reason: string;
  readonly units: string;
  /** "2.26 % of 1 596 eligible visits" */
  readonly share: string;
};

/** The exceptions of a report, criterion by criterion, the most frequent reason first. */
export function exceptionLines(
  criteria: readonly AdherenceCriterion[],
  own: OwnWords = {},
): ExceptionLine[] {
  return criteria.flatMap(({ criterion, lines }) =>
    lines.flatMap((line) =>
      line.masked
        ? []
        : Object.entries(line.figure.excepted)
            .sort(([, one], [, other]) => other - one)
            .map(([reason, units]) => ({
              id: `${criterion.id}/${line.about}/${reason}`,
              criterion: criterion.title,
              about: line.about,
              reason: ownReasonWords(reason, own),
              units: `${count(units)} ${unitName(line.figure, units)}`,
              share: `${percent(units / line.eligible)} of ${count(line.eligible)} eligible`,
            })),
    ),
  );
}
