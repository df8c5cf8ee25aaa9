import { z } from "zod";
import { type FiguresReach, hasRole, type OwnReach, qualityReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { Period } from "@/lib/records/period";
import { safetyKinds, safetyList } from "@/lib/store/quality/safety-list";
import { listAddress } from "@/lib/views/list-address";
import { listWords } from "@/lib/views/list-words";
import type { PeriodChoices } from "@/lib/views/period-choices";
import { periodWords } from "@/lib/views/period-words";
import { type SafetyItemLine, safetyItemLine } from "@/lib/views/safety-items";
import type { SafetyLine } from "@/lib/views/safety-list";
import { safetyKindWords, safetyTotals } from "@/lib/views/safety-totals";
import { type Address, askedFigures } from "./asked-period";
import { leadOrOwn } from "./lead-or-own";
import { ownPeriod } from "./own-period";
import { safetyCounts } from "./safety-counts";

type Choice = { readonly name: string; readonly words: string };

/** The list for whoever may see visits. */
export type SafetyItems = {
  /** What there is in the period, in a sentence. */
  readonly finding: string;
  readonly lines: readonly SafetyItemLine[];
  readonly words: string;
  readonly kind: string;
  readonly kinds: readonly Choice[];
  readonly open: boolean;
  readonly clinician: string;
  /** None for a clinician. */
  readonly clinicians: readonly Choice[];
  readonly keep: Readonly<Record<string, string | undefined>>;
  readonly previous: string | null;
  readonly next: string | null;
};

export type SafetyPage = {
  readonly as: "lead" | "own" | "officer";
  readonly period: { readonly name: string; readonly words: string };
  readonly periods: PeriodChoices;
  readonly practices: readonly { readonly code: string; readonly name: string }[];
  readonly practice: string | undefined;
  /** Null for the quality officer, who gets counts. */
  readonly items: SafetyItems | null;
  readonly counts: readonly SafetyLine[];
};

const size = 25;
const asked = z.object({
  kind: z.enum(safetyKinds).optional().catch(undefined),
  open: z.literal("yes").optional().catch(undefined),
  // No database takes a NUL in a text.
  clinician: z
    .string()
    .max(200)
    .regex(/^[^\0]+$/)
    .optional()
    .catch(undefined),
  view: z.enum(["own", "counts"]).optional().catch(undefined),
  page: z.coerce.number().int().min(1).max(100_000).catch(1),
});
type Asked = z.output<typeof asked>;

/**
 * What is listed apart from scores: for the lead with the visits, for a clinician their own, for the quality officer
 * counts, days and open actions by practice.
 *
 * @throws Refused, AskedWrongly
 */
export async function safetyPage(viewer: Viewer, address: Address): Promise<SafetyPage> {
  const read = asked.parse({ ...address, page: address.page ?? 1 });
  const officer = hasRole(viewer, "quality-officer");
  const seesVisits = hasRole(viewer, "clinical-lead") || hasRole(viewer, "clinician");
  if (officer && (!seesVisits || read.view === "counts")) {
    const at = await askedFigures(qualityReach(viewer), address);
    const counts = await safetyCounts(at.reach, at.period);
    return { ...frameOf("officer", at), items: null, counts };
  }
  const reach = leadOrOwn(viewer, read.view === "own");
  if ("clinicianKey" in reach) {
    const at = { ...(await ownPeriod(reach, address)), practices: [], practice: undefined };
    return {
      ...frameOf("own", at),
      items: await itemsOf(reach, at.period, read, { practice: undefined }),
      counts: [],
    };
  }
  const at = await askedFigures(reach, address);
  return {
    ...frameOf("lead", at),
    items: await itemsOf(at.reach, at.period, read, { practice: at.practice }),
    counts: [],
  };
}

function frameOf(
  as: SafetyPage["as"],
  at: Pick<SafetyPage, "periods" | "practices" | "practice"> & { readonly period: Period },
) {
  const { period, periods, practices, practice } = at;
  return {
    as,
    period: { name: period.name, words: periodWords(period) },
    periods,
    practices,
    practice,
  };
}

async function itemsOf(
  reach: FiguresReach | OwnReach,
  period: Period,
  { kind, open, clinician, view, page }: Asked,
  { practice }: { readonly practice: string | undefined },
): Promise<SafetyItems> {
  const own = "clinicianKey" in reach;
  const worker = own ? undefined : clinician;
  const { items, all, totals, workers } = await safetyList(reach, {
    ...{ period, kind, open: open === "yes", worker, limit: size, offset: (page - 1) * size },
  });
  const keep = { period: period.name, practice, view };
  const to = (other: number) =>
    listAddress(
      "/safety",
      { ...keep, kind, open, clinician: worker, page: other === 1 ? undefined : String(other) },
      "#items",
    );
  return {
    finding: safetyTotals(totals, own),
    lines: items.map(safetyItemLine),
    words: listWords(page, size, all, "No item is like this."),
    kind: kind ?? "",
    kinds: safetyKinds.map((name) => ({ name, words: safetyKindWords[name] })),
    open: open === "yes",
    clinician: worker ?? "",
    clinicians: own ? [] : workers.map(({ key, code }) => ({ name: key, words: code })),
    keep,
    previous: page > 1 ? to(page - 1) : null,
    next: page * size < all ? to(page + 1) : null,
  };
}
