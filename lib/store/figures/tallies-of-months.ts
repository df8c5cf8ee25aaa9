import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { Tally } from "@/lib/measures/tally";
import type { Bucket } from "@/lib/measures/units/subjects";
import { talliesOf } from "@/lib/measures/units/tallies-of";
import { criterionId } from "@/lib/protocol/criterion";
import { defaultProtocol, type Protocol, standingOf } from "@/lib/protocol/protocol";
import { monthsOfAll } from "../month-units/months-of";
import { readMonths } from "../month-units/read-months";
import { readOwn } from "../month-units/read-own";
import { apartByStratum, partOf } from "../month-units/strata-parts";
import { protocolWithin } from "../protocol/versions";
import type { Asked } from "./counted";
import { stratumOf } from "./stratum-sql";
import { isContinuous } from "./unit-sql";

/**
 * The tallies of practices, or of one clinician, from the units that are kept of months; undefined where it is not months that are
 * asked for.
 */
export async function talliesOfMonths(
  reach: FiguresReach | OwnReach,
  asked: Asked,
): Promise<Tally[] | undefined> {
  const own = "clinicianKey" in reach;
  const months = monthsOfAll(asked.periods);
  if (!months) return undefined;
  const parts = asked.measures.map((measure) => partOf(measure, asked.strata));
  const kept = await (own
    ? readOwn(reach, months, parts)
    : readMonths(reach.practices, months, parts));
  const apart = asked.strata ? apartByStratum(kept, parts) : { months: kept, measures: parts };
  const protocol = asked.measures.some((measure) => criterionId(measure) !== undefined)
    ? await protocolWithin(reach)
    : defaultProtocol;
  const by = own
    ? (["clinician"] as const)
    : asked.by.filter((kind) => kind !== "clinician" || reach.byClinician);
  const counted = { ...asked, measures: apart.measures, by, isContinuous };
  return talliesOf(apart.months, counted).map(({ tally, bucket }) => ({
    ...tally,
    ...stratumOf(tally.measure),
    ...judgedBy(protocol, own ? null : reach.practices, bucket, tally),
  }));
}

/** By which version a criterion's units were judged, in the practices that the subject has units in. */
function judgedBy(
  protocol: Protocol,
  within: readonly string[] | null,
  { kind, practices }: Bucket,
  { measure, period }: Tally,
): Pick<Tally, "criterion" | "changedOn" | "targetsDiffer"> {
  const id = criterionId(measure);
  if (id === undefined) return {};
  const each = [...practices.values()];
  const several = kind === "group" || each.some((some) => some.size > 1);
  const own = several ? within : [...new Set(each.flatMap((some) => [...some]))];
  return standingOf(protocol, id, own, period) ?? {};
}
