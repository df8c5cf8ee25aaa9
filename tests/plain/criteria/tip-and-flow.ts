import type { Records } from "../records";
import { canalExclusion } from "../treatment-population";
import { type Unit, unitOf } from "../unit";
import { visitsOf } from "../visit";
import { asRecorded, canalDeliveries, type Delivery } from "./deliveries";
import { canalUnits, judged } from "./judged";
import { all, any, atLeast, atMost, is } from "./kleene";
import { exceptionOf } from "./steps-and-exceptions";

const bySyringe = ({ way }: Delivery) => is(way, "syringe");

/** Canals irrigated by syringe, by whether the deepest tip stayed 1 to 3 mm short. */
export function tipDepth(records: Records): Unit[] {
  return canalUnits(records, (visit, canal) => {
    const deliveries = canalDeliveries(visit, canal);
    // One that nobody knows may have been by syringe, with its tip anywhere.
    const tips = deliveries.filter((one) => bySyringe(one) !== false).map(({ tip }) => tip);
    return judged({
      member: deliveries.some((one) => bySyringe(one) === true),
      outside: canalExclusion(visit, canal),
      met: all([...tips.map((tip) => atLeast(tip, 1)), any(tips.map((tip) => atMost(tip, 3)))]),
      excepted: exceptionOf("tip-depth", visit, canal),
    });
  });
}

/** Deliveries, those for the whole tooth too, by whether the flow was within so many mL/min. */
export function flowWithin(records: Records, limit: number): Unit[] {
  return visitsOf(records).flatMap((visit) =>
    visit.deliveries.flatMap((row) => {
      const canal = visit.canals.find((one) => one.row.canal === row.canal);
      const state = judged({
        member: true,
        met: atMost(asRecorded(row, canal?.row.timer_reset).flow, limit),
        excepted: exceptionOf("flow-limit", visit, canal),
      });
      return state ? [unitOf(records, visit, canal, state, row)] : [];
    }),
  );
}

/** Canals, by whether the timer was started afresh for them. */
export function timerReset(records: Records): Unit[] {
  return canalUnits(records, (visit, canal) => {
    const reset = canal.row.timer_reset;
    return judged({
      member: true,
      outside: canalExclusion(visit, canal),
      left: [["no-timer", is(reset, "no-timer")]],
      met: is(reset, "yes"),
      excepted: exceptionOf("timer-reset", visit, canal),
    });
  });
}
