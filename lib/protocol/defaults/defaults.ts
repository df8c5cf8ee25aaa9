import { criterionIds } from "@/lib/records/criterion-id";
import type { Criterion } from "../criterion";
import { beforeIrrigation } from "./before-irrigation";
import { equipment } from "./equipment";
import { instruments } from "./instruments";
import { irrigation } from "./irrigation";

/**
 * The criteria that every practice begins with, in page order. They are never edited: what changes one is a dated
 * version of a practice.
 */
export const defaults: readonly Criterion[] = [
  ...beforeIrrigation,
  ...irrigation,
  ...instruments,
  ...equipment,
].sort((one, other) => placeOf(one) - placeOf(other));

/** Those that are not in force until a practice sets a limit, or asks for them. */
export const notInForceAtFirst: readonly string[] = ["flow-limit", "activation", "speed-torque"];

function placeOf({ id }: Criterion): number {
  return (criterionIds as readonly string[]).indexOf(id);
}
