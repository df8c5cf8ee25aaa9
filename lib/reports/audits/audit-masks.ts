import { type FiguresReach, narrowed } from "@/lib/access/reach";
import type { AuditComputed, AuditMasked } from "@/lib/audit/cycle/audit-content";
import { figureId, placeId } from "@/lib/audit/cycle/figure-id";
import { reportMasks } from "@/lib/audit/disclosure/report-masks";
import { masksAround } from "../disclosure-masks";

/** What the report of an audit masks: the same that every other file of the period does. @param practice null is the whole group */
export async function auditMasks(
  lead: FiguresReach,
  practice: string | null,
  computed: AuditComputed,
): Promise<AuditMasked> {
  const { period, criteria, practices } = computed;
  const masks = reportMasks(await masksAround(narrowed(lead, practice ?? undefined), period), {
    ...{ period, wholeGroup: practice === null && lead.practices === null, criteria },
    practices: practices.map(({ code }) => code),
  });
  const places = [...computed.adherence, ...computed.measures].filter(
    ({ about }) => about.kind !== "clinician",
  );
  return {
    lines: places
      .filter(({ about, criterion }) => criterion && masks.line(about, criterion.id))
      .map(figureId),
    places: [
      ...new Set(
        places.filter(({ about }) => masks.score(about)).map(({ about }) => placeId(about)),
      ),
    ].sort(),
    people: practices.flatMap(({ code }) =>
      (["patients", "clinicians"] as const)
        .filter((who) => masks.people(code, who))
        .map((who) => `${code}/${who}`),
    ),
  };
}
