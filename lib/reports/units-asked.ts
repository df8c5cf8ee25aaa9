import { z } from "zod";
import type { Measured } from "@/lib/measures/measured";
import { statesOf } from "@/lib/views/unit-lines";
import type { Address } from "./asked-period";

const asked = z.object({
  outcome: z.string().max(40).optional().catch(undefined),
  page: z.coerce.number().int().min(1).max(100_000).catch(1),
});

/** ?outcome=…&page=… of a list of units; an outcome that the measure does not have is not asked for. */
export function readUnitsAsked(
  measured: Measured,
  address: Address,
): { readonly outcome: string | undefined; readonly page: number } {
  const read = asked.parse({ outcome: address.outcome || undefined, page: address.page ?? 1 });
  return {
    outcome: statesOf(measured).find(({ name }) => name === read.outcome)?.name,
    page: read.page,
  };
}
