import type { Condition } from "@/lib/protocol/condition";
import type { Criterion } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { limitsOfTests } from "../plain/criteria/criteria";

const limits: Readonly<Record<string, number>> = {
  flow_ml_min: limitsOfTests.flow,
  speed_per_min: limitsOfTests.speed,
  torque_n_cm: limitsOfTests.torque,
};

/** The default criteria, with the tests' limits where a practice has to set one. */
export const defaultsWithLimits: readonly Criterion[] = defaults.map((criterion) => ({
  ...criterion,
  met: withLimits(criterion.met),
}));

/** The three that are not in force until a practice sets them, with the tests' limits. */
export const setByPractice: readonly Criterion[] = defaultsWithLimits.filter(({ id }) =>
  ["flow-limit", "activation", "speed-torque"].includes(id),
);

function withLimits(condition: Condition): Condition {
  if ("field" in condition && "atMost" in condition && condition.atMost === null)
    return { ...condition, atMost: limits[condition.field] ?? null };
  if ("all" in condition) return { all: condition.all.map(withLimits) };
  if ("any" in condition) return { any: condition.any.map(withLimits) };
  return condition;
}
