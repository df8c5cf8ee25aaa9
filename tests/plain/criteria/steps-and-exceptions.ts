import type { Values } from "@/lib/records/column";
import type { Canal, Visit } from "../visit";

/** The step's row: the canal's own goes before the visit's; of a visit the visit's alone. */
export function stepOf(visit: Visit, canal: Canal | undefined, step: string): Values | undefined {
  const rows = visit.steps.filter((row) => row.step === step);
  const ofCanal = canal && rows.find((row) => row.canal === canal.row.canal);
  return ofCanal ?? rows.find((row) => row.canal === undefined);
}

/** The status of the step; undefined where nobody wrote it down. */
export function statusOf(visit: Visit, canal: Canal | undefined, step: string): unknown {
  return stepOf(visit, canal, step)?.status;
}

/**
 * The coded reason for which the unit may go unmet: of the steps, in the order given, the first that is excepted;
 * else the exceptions table's, the canal's own before the visit's.
 */
export function exceptionOf(
  criterion: string,
  visit: Visit,
  canal?: Canal,
  steps: readonly string[] = [],
): string | undefined {
  for (const step of steps) {
    const row = stepOf(visit, canal, step);
    if (row?.status === "excepted") return String(row.reason);
  }
  const rows = visit.exceptions.filter((row) => row.criterion === criterion);
  const ofCanal = canal && rows.find((row) => row.canal === canal.row.canal);
  const row = ofCanal ?? rows.find((one) => one.canal === undefined);
  return row && String(row.reason);
}
