import { z } from "zod";
import { type FiguresReach, leadReach, narrowed } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { type Period, period as periodNamed, shifted } from "@/lib/records/period";
import { type AuditRow, auditsWithin, beginAudit, changeAudit } from "@/lib/store/audits/audits";
import { practicesWithin } from "@/lib/store/records/practices";
import { auditName } from "@/lib/views/audits/audit-name";
import { criteriaShown } from "../criteria-shown";
import type { Wrong } from "../read-input";
import type { Typed } from "./answer";
import { periodOf } from "./computed";

/** A begun audit by its number, or what is wrong. */
export type Begun = { readonly audit: number } | { readonly wrong: Wrong };

const chosen = z.object({ practice: z.string(), period: z.string() });
const numbered = z.object({ audit: z.coerce.number().int().positive() });

/** Begins an audit of a practice or, where `practice` is empty, the group, with every criterion in force. @throws Refused */
export async function beginNewAudit(viewer: Viewer, typed: Typed): Promise<Begun> {
  const { practice, period } = chosen.parse(typed);
  const reach = leadReach(viewer);
  const of = periodNamed(period);
  if (!of) return { wrong: { period: "Choose a period from the list." } };
  if (practice !== "" && !(await practicesWithin(reach)).some(({ code }) => code === practice))
    return { wrong: { practice: "Choose a practice from the list." } };
  return begin(reach, practice || null, of, null);
}

/**
 * Re-audits in one step: the same scope, the period that follows, with its criteria that are still in force. Where an audit of that was
 * begun already it is that one, and repeats this from then on. @throws Refused
 */
export async function reAudit(viewer: Viewer, typed: Typed): Promise<Begun> {
  const { audit } = numbered.parse(typed);
  const reach = leadReach(viewer);
  const before = (await auditsWithin(reach)).find(({ id }) => id === audit);
  if (!before) return { wrong: { form: "There is no such audit among those you run." } };
  return begin(reach, before.practice, nextOf(before), before);
}

/** The period that a re-audit is of. */
export function nextOf(before: Pick<AuditRow, "period">): Period {
  return shifted(periodOf(before), 1);
}

async function begin(
  reach: FiguresReach,
  practice: string | null,
  of: Period,
  before: AuditRow | null,
): Promise<Begun> {
  const known = (await auditsWithin(reach)).find(
    (one) => one.practice === practice && one.period === of.name && one.setAsideBy === null,
  );
  if (known && before) {
    if (known.previous === null) await changeAudit(reach, known.id, { previous: before.id });
    return { audit: known.id };
  }
  if (known)
    return {
      wrong: { form: `${auditName(known)} was begun already: it stands in the list above.` },
    };
  return { audit: await beginFor(reach, practice, of, reach.by, before) };
}

/** Begins an audit with the criteria in force, or those of them that `before` had; one of that scope that is there already is taken. */
export async function beginFor(
  reach: FiguresReach,
  practice: string | null,
  of: Period,
  by: string,
  before: AuditRow | null = null,
): Promise<number> {
  const known = (await auditsWithin(reach)).find(
    (one) => one.practice === practice && one.period === of.name && one.setAsideBy === null,
  );
  if (known) return known.id;
  const inForce = await criteriaShown(narrowed(reach, practice ?? undefined), [of]);
  const criteria = inForce
    .map(({ id }) => id)
    .filter((id) => !before || before.criteria.includes(id));
  return beginAudit(reach, {
    ...{ practice, period: of.name, criteria, previous: before?.id ?? null, by },
  });
}
