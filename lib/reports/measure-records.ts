import { z } from "zod";
import type { FiguresReach } from "@/lib/access/reach";
import type { Figure } from "@/lib/audit/figure";
import type { Measured } from "@/lib/measures/measured";
import type { Period } from "@/lib/records/period";
import type { UnitState } from "@/lib/store/figures/unit-list";
import { measureAddress } from "@/lib/views/lead-address";
import { pageWords, statesOf, type UnitLine, unitLine } from "@/lib/views/unit-lines";
import type { Address } from "./asked-period";
import { keptUnits } from "./kept-units";
import { ownReasons } from "./own-reasons";

/** The records behind a figure: a page of them, and what they can be narrowed to. */
export type MeasureRecords = {
  readonly lines: readonly UnitLine[];
  readonly words: string;
  readonly clinician: string | undefined;
  /** The one chair that the address asks for, and where those of all are. */
  readonly chair: { readonly code: string; readonly all: string } | null;
  readonly outcome: string | undefined;
  readonly clinicians: readonly { readonly name: string; readonly words: string }[];
  readonly outcomes: readonly { readonly name: string; readonly words: string }[];
  readonly previous: string | null;
  readonly next: string | null;
};

const size = 25;
// No database takes a NUL in a text.
const plain = z
  .string()
  .max(200)
  .regex(/^[^\0]*$/)
  .optional()
  .catch(undefined);
const asked = z.object({
  clinician: plain,
  chair: plain,
  outcome: z.string().max(40).optional().catch(undefined),
  page: z.coerce.number().int().min(1).max(100_000).catch(1),
});

/** ?clinician=…&chair=…&outcome=…&page=… of a measure's page; an outcome that the measure does not have is not asked for. */
export async function measureRecords(
  reach: FiguresReach,
  measured: Measured,
  period: Period,
  address: Address,
  filters: Readonly<Record<string, string | undefined>>,
  figures: readonly Figure[],
): Promise<MeasureRecords> {
  const { measure } = measured;
  const read = asked.parse({
    clinician: address.clinician || undefined,
    chair: address.chair || undefined,
    outcome: address.outcome || undefined,
    page: address.page ?? 1,
  });
  const outcomes = statesOf(measured);
  const outcome = outcomes.find((one) => one.name === read.outcome)?.name;
  const { clinician, chair, page } = read;
  const state = outcome as UnitState | undefined;
  const listed = {
    measure,
    period,
    clinician,
    chair,
    state,
    limit: size,
    offset: (page - 1) * size,
  };
  const { units, all } = await keptUnits(reach, listed);
  const reasons = await ownReasons(reach);
  const at = (to: number) =>
    measureAddress(
      measure,
      { ...filters, clinician, chair, outcome, page: to === 1 ? undefined : String(to) },
      "#records",
    );
  return {
    lines: units.map((unit) => unitLine(measured, unit, true, reasons)),
    words: pageWords(page, size, all),
    clinician,
    chair: chair
      ? {
          code: chair,
          all: measureAddress(measure, { ...filters, clinician, outcome }, "#records"),
        }
      : null,
    outcome,
    clinicians: figures.flatMap((figure) =>
      figure.about.kind === "clinician"
        ? [{ name: figure.about.key, words: figure.about.code }]
        : [],
    ),
    outcomes,
    previous: page > 1 ? at(page - 1) : null,
    next: page * size < all ? at(page + 1) : null,
  };
}
