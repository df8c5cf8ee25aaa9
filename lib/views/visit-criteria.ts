import type { Criterion, Outcome } from "@/lib/protocol/criterion";
import type { JudgedUnit } from "@/lib/protocol/judged-unit";
import { inTradeOrder } from "./canal-order";
import { evidenceWords } from "./evidence-words";
import { exceptionAddress } from "./exception-address";
import { explanationAddress, type UnitPlace } from "./explanation-address";
import { outcomeMark } from "./outcome-mark";
import type { OwnWords } from "./protocol/own-words";

/** A unit of a criterion at the visit. */
export type UnitAtVisit = {
  readonly criterion: Criterion;
  readonly canal: string;
  readonly seq: number | null;
  readonly unit: JudgedUnit;
  readonly outcome: Outcome;
};

/** A criterion at one visit: what became of each unit and the evidence for it. */
export type VisitCriterion = {
  readonly id: string;
  readonly title: string;
  readonly statement: string;
  /** Why it has no unit here; null where it has some. */
  readonly none: string | null;
  readonly units: readonly {
    readonly id: string;
    readonly unit: string;
    readonly mark: string;
    readonly state: string;
    readonly evidence: string;
    /** The page that says why it counts so. */
    readonly why: string;
    /** Where its exception is entered or asked about; null where none is foreseen or needed. */
    readonly exception: string | null;
  }[];
};

/** The criteria with their units at the visit. @param own the practice's own terms */
export function visitCriteria(
  criteria: readonly Criterion[],
  units: readonly UnitAtVisit[],
  at: Pick<UnitPlace, "practice" | "sessionId" | "chair" | "day">,
  own: OwnWords = {},
): VisitCriterion[] {
  return criteria.map((criterion) => {
    const these = units
      .filter((unit) => unit.criterion.id === criterion.id)
      .sort((one, other) => inTradeOrder(one.canal, other.canal));
    return {
      id: criterion.id,
      title: criterion.title,
      statement: criterion.byClinician
        ? criterion.statement
        : `${criterion.statement} It is the chair's day that counts, not the clinician.`,
      none:
        these.length > 0
          ? null
          : criterion.unit === "chair-day"
            ? "No continuous delivery in this chair on the day."
            : "Nothing of this visit is looked at.",
      units: these.map((unit) => ({
        id: `${unit.canal}/${unit.seq ?? ""}`,
        unit:
          unit.canal !== ""
            ? `canal ${unit.canal}${unit.seq === null ? "" : `, number ${unit.seq}`}`
            : criterion.unit === "chair-day"
              ? "the chair's day"
              : "the visit",
        ...stateOf(criterion, unit.outcome, own),
        why: explanationAddress(criterion.id, {
          ...at,
          sessionId: criterion.unit === "chair-day" ? null : at.sessionId,
          canal: unit.canal || null,
          seq: unit.seq,
        }),
        exception: mayBeExcepted(criterion, unit.outcome)
          ? exceptionAddress({
              practice: at.practice,
              sessionId: at.sessionId ?? "",
              criterion: criterion.id,
              canal: unit.canal,
            })
          : null,
        evidence: evidenceWords(criterion, unit.unit, own).join("; "),
      })),
    };
  });
}

/** Neither met nor left out, and the criterion foresees that there may be a reason. */
export function mayBeExcepted({ exceptions, unit }: Criterion, { outcome }: Outcome): boolean {
  return exceptions !== null && unit !== "chair-day" && outcome !== "met" && outcome !== "excluded";
}

function stateOf(
  criterion: Criterion,
  outcome: Outcome,
  own: OwnWords,
): { mark: string; state: string } {
  const { mark, outcome: state } = outcomeMark(criterion, outcome, own);
  return { mark, state };
}
