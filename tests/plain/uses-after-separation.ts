import type { Values } from "@/lib/records/column";
import type { Records } from "./records";

/**
 * The uses of instruments, of which those after their instrument's separation have lost its id, as they would be
 * held: a later visit, or a higher seq in the same canal.
 */
export function withoutUsesAfterSeparation(records: Records): Values[] {
  return records.instruments.map((use) => {
    const after = records.instruments.some((parting) => follows(records, use, parting));
    if (!after) return use;
    const { instrument_id: _, ...others } = use;
    return others;
  });
}

function follows(records: Records, use: Values, parting: Values): boolean {
  if (use.instrument_id === undefined || use.instrument_id !== parting.instrument_id) return false;
  if (Number(parting.separated ?? 0) === 0) return false;
  const [later, earlier] = [visitOf(records, use), visitOf(records, parting)];
  if (later.practice !== earlier.practice) return false;
  if (later === earlier)
    return use.canal === parting.canal && Number(use.seq) > Number(parting.seq);
  return String(later.started_at) > String(earlier.started_at);
}

function visitOf(records: Records, use: Values): Values {
  const visit = records.sessions.find(
    (one) =>
      one.session_id === use.session_id &&
      (use.practice === undefined || one.practice === use.practice),
  );
  if (!visit) throw new Error(`a use without a visit: ${use.session_id}`);
  return visit;
}
