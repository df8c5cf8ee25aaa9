import { z } from "zod";
import type { Measured } from "@/lib/measures/measured";
import { statesOf } from "@/lib/views/unit-lines";
import { type Address, AskedWrongly } from "./asked-period";

const asked = z.object({
  outcome: z.string().max(40).optional(),
  page: z.coerce.number().int().min(1).max(100_000).catch(1),
});

/**
 * ?outcome=…&page=… of a list of units.
 *
 * @throws AskedWrongly where the measure has no such outcome: showing every unit would be an answer to another question
 */
export function readUnitsAsked(
  measured: Measured,
  address: Address,
): { readonly outcome: string | undefined; readonly page: number } {
  const states = statesOf(measured);
  const read = asked.safeParse({
    outcome: address.outcome || undefined,
    page: address.page ?? 1,
  });
  const outcome = read.success && states.find(({ name }) => name === read.data.outcome)?.name;
  if (!read.success || (read.data.outcome !== undefined && !outcome))
    throw new AskedWrongly(
      `These units have no such outcome. The outcomes are ${states.map(({ name }) => name).join(", ")}; without one every unit is shown.`,
    );
  return { outcome: outcome || undefined, page: read.data.page };
}
