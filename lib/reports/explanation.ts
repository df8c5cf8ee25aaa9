import { z } from "zod";
import {
  type FiguresReach,
  hasRole,
  leadReach,
  type OwnReach,
  ownReach,
  qualityReach,
} from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import type { Viewer } from "@/lib/access/viewer";
import { explain } from "@/lib/protocol/explain";
import { criteriaOf } from "@/lib/protocol/protocol";
import { ownTerms } from "@/lib/store/protocol/own-terms";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { chairDay } from "@/lib/store/visit/chair-day";
import { rowPlaces } from "@/lib/store/visit/row-places";
import { unitVisit, type VisitHead } from "@/lib/store/visit/visit-head";
import { visitRows } from "@/lib/store/visit/visit-rows";
import { type VisitUnit, visitUnits } from "@/lib/store/visit/visit-units";
import { type ExplanationView, explanationView } from "@/lib/views/explanation";
import { ownWordsOf } from "@/lib/views/protocol/own-words";

/** Where the unit is: a visit of a practice, with a canal and a number, or a chair on a day. */
export type AskedUnit = { readonly criterion: string; readonly practice: string } & (
  | { readonly sessionId: string; readonly canal?: string; readonly seq?: string }
  | { readonly chair: string; readonly day: string }
);

const number = z.coerce.number().int().min(0).max(1_000_000).optional().catch(undefined);
const calendarDay = z.iso.date();

/**
 * Why a unit counts as it does: for the clinical lead, for the clinician who worked there, and without clinicians for
 * the quality officer. Null where there is no such unit.
 *
 * @throws Refused
 */
export async function explanation(
  viewer: Viewer,
  asked: AskedUnit,
): Promise<ExplanationView | null> {
  const reach = reachFor(viewer, asked.practice);
  const head = await headOf(reach, asked);
  if (!head) return null;
  const units = await visitUnits(reach, head, [asked.criterion]);
  const unit = "chair" in asked ? units[0] : theOne(units, asked.canal, number.parse(asked.seq));
  if (!unit) return null;
  const [rows, protocol, terms] = await Promise.all([
    visitRows(head),
    protocolWithin(reach),
    ownTerms(reach),
  ]);
  const titles = new Map(criteriaOf(protocol).map(({ id, title }) => [id, title]));
  const items = Object.values(unit.unit.lists)
    .flat()
    .flatMap(({ row }) => row ?? []);
  return explanationView({
    criterion: unit.criterion,
    canal: unit.canal,
    seq: unit.seq,
    head,
    unit: unit.unit,
    explanation: explain(unit.criterion, unit.unit),
    counted: unit.counted,
    rows,
    places: await rowPlaces(items),
    own: ownWordsOf(terms.filter(({ practice }) => practice === head.practice)),
    titleOf: (id) => titles.get(id) ?? id,
    mayOpenVisit: "clinicianKey" in reach || reach.byClinician,
  });
}

function headOf(reach: FiguresReach | OwnReach, asked: AskedUnit): Promise<VisitHead | null> {
  if (!("chair" in asked)) return unitVisit(reach, asked.practice, asked.sessionId);
  return calendarDay.safeParse(asked.day).success
    ? chairDay(reach, asked.practice, asked.chair, asked.day)
    : Promise.resolve(null);
}

/** The unit that the address names; a visit of one unit needs no more. */
function theOne(
  units: readonly VisitUnit[],
  canal: string | undefined,
  seq: number | undefined,
): VisitUnit | undefined {
  return units.find(
    (unit) =>
      (canal === undefined || unit.canal === canal) && (seq === undefined || unit.seq === seq),
  );
}

/** Whoever leads the practice sees it as a lead; else as the clinician they are, else as the quality officer. */
function reachFor(viewer: Viewer, practice: string): FiguresReach | OwnReach {
  const reaches = [
    ...(hasRole(viewer, "clinical-lead") ? [leadReach(viewer)] : []),
    ...(hasRole(viewer, "quality-officer") ? [qualityReach(viewer)] : []),
  ];
  const within = reaches.find(
    ({ practices }) => practices === null || practices.includes(practice),
  );
  if (within?.byClinician) return within;
  if (hasRole(viewer, "clinician")) return ownReach(viewer);
  const [any] = [within, ...reaches].filter((one) => one !== undefined);
  if (any) return any;
  throw new Refused("Units are for the clinical lead, the clinician and the quality officer.");
}
