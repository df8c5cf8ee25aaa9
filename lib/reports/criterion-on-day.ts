import type { Criterion } from "@/lib/protocol/criterion";
import { criteriaOf, type Protocol, spansOf, spansWithin } from "@/lib/protocol/protocol";
import { dayAfter } from "@/lib/records/period";
import type { ExceptedStep } from "@/lib/store/exceptions/exception-list";

/** The criterion as it is in force in a practice on a local day; undefined where it is not. */
export function criterionOnDay(
  protocol: Protocol,
  id: string,
  practice: string,
  day: string,
): Criterion | undefined {
  const [span] = spansWithin(protocol, id, [practice], { from: day, until: dayAfter(day, 1) });
  return span?.criterion;
}

/** The steps that are an exception where they are excepted, with where and when the criterion was in force. */
export function exceptedSteps(protocol: Protocol): ExceptedStep[] {
  return criteriaOf(protocol)
    .flatMap(({ id }) => spansOf(protocol, id))
    .flatMap(({ criterion, practices, from, until }) =>
      (criterion.exceptions?.steps ?? []).map((step) => ({
        ...{ criterion: criterion.id, step, from, until },
        only: "only" in practices ? practices.only : null,
        allBut: "allBut" in practices ? practices.allBut : [],
      })),
    );
}

/** Titles by id, in the latest wording; what is not known keeps its id. */
export function criterionTitles(protocol: Protocol): (id: string) => string {
  const titles = new Map(criteriaOf(protocol).map(({ id, title }) => [id, title]));
  return (id) => titles.get(id) ?? id;
}
