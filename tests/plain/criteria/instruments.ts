import type { Values } from "@/lib/records/column";
import type { Records } from "../records";
import { type State, type Unit, unitOf } from "../unit";
import { type Canal, type Visit, visitsOf } from "../visit";
import { judged } from "./judged";
import { all, any, atMost, is, known } from "./kleene";
import { isPowered } from "./powered";
import { exceptionOf } from "./steps-and-exceptions";

/** Uses of powered instruments, by whether speed (1/min) and torque (N.cm) were within the limits. */
export function speedTorqueWithin(
  records: Records,
  limits: { readonly speed: number; readonly torque: number },
): Unit[] {
  return unitsOfUses(records, (use, visit, canal) =>
    judged({
      member: isPowered(use.kind),
      met: all([atMost(use.speed_per_min, limits.speed), atMost(use.torque_n_cm, limits.torque)]),
      excepted: exceptionOf("speed-torque", visit, canal),
    }),
  );
}

/** Uses, by whether the instrument was used for no more than 4 patients, and for one where it is for single use. */
export function useLimit(records: Records): Unit[] {
  return unitsOfUses(records, (use, visit, canal) =>
    judged({
      member: true,
      met: all([
        atMost(use.use_number, 4),
        any([is(use.single_use, false), atMost(use.use_number, 1)]),
      ]),
      excepted: exceptionOf("use-limit", visit, canal),
    }),
  );
}

/** Uses, by whether lot and, where the instrument may have been reused, steriliser cycle are there; never not recorded. */
export function traceable(records: Records): Unit[] {
  return unitsOfUses(records, (use) => {
    const unused = known(atMost(use.use_number, 1)) || known(is(use.single_use, true));
    return judged({
      member: true,
      met: use.lot !== undefined && (use.steriliser_cycle !== undefined || unused),
    });
  });
}

/** Rows of uses, each as many units as it stands for. */
function unitsOfUses(
  records: Records,
  stateOf: (use: Values, visit: Visit, canal: Canal) => State | undefined,
): Unit[] {
  return visitsOf(records).flatMap((visit) =>
    visit.canals.flatMap((canal) =>
      canal.uses.flatMap((use) => {
        const state = stateOf(use, visit, canal);
        const weight = Number(use.uses ?? 1);
        return state ? [{ ...unitOf(records, visit, canal, state, use), weight }] : [];
      }),
    ),
  );
}
