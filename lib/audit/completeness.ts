import { criterionOf } from "@/lib/protocol/criteria";
import type { Figure } from "./figure";

/** How much of what should be recorded is: `recorded` of `due` units. */
export type Completeness = {
  readonly measure: string;
  readonly recorded: number;
  readonly due: number;
  /** Null where nothing is due. */
  readonly share: number | null;
  /** The least share at which a criterion can be assessed; null for measures and for criteria about recording itself. */
  readonly floor: number | null;
};

/** The completeness of a figure's units, those left out or excepted not counted. */
export function completenessOf(figure: Figure): Completeness {
  const criterion = criterionOf(figure.measure);
  // Criteria count what is not recorded in the denominator; the other measures leave it out.
  const counted = figure.kind === "median" ? figure.n : figure.denominator;
  const due = criterion ? counted : counted + figure.notRecorded;
  const recorded = due - figure.notRecorded;
  return {
    measure: figure.measure,
    recorded,
    due,
    share: due === 0 ? null : recorded / due,
    floor: criterion?.completenessFloor ?? null,
  };
}
