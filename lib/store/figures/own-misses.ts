import type { OwnReach } from "@/lib/access/reach";
import { type Criterion, criterionMeasure } from "@/lib/protocol/criterion";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import { monthsOfAll } from "../month-units/months-of";
import { type Missed, type OwnMissed, type OwnSight, ownMissed } from "../month-units/own-missed";
import { protocolWithin } from "../protocol/versions";
import { fillIn } from "./criterion/fill-in";
import { Parameters } from "./criterion/parameters";
import { criterionUnits, type Evidence, type Lacking } from "./criterion/units-sql";
import { practicesOf } from "./practices-of";

/** A unit of one's own that counts against a criterion, with what the criterion looks at. */
export type Miss = {
  readonly practice: string;
  readonly sessionId: string;
  readonly day: string;
  readonly tooth: string;
  /** Empty where the unit is the visit. */
  readonly canal: string;
  /** There is no evidence either way. */
  readonly missing: boolean;
  /** Of a delivery or use, its number in the canal. */
  readonly seq: number | null;
  readonly evidence: Evidence;
};

export type MissesPage = {
  readonly criterion: Criterion;
  readonly period: Period;
  readonly limit: number;
  readonly offset: number;
};

/**
 * Of each page asked for, the clinician's own units that are not met or not recorded, latest first. What staff and equipment do
 * together is nobody's own and has none. Which visits they are of is kept by month, so that only those of the page are judged for what
 * was looked at; a period that cuts a month is judged whole.
 */
export async function ownMisses(reach: OwnReach, pages: readonly MissesPage[]): Promise<Miss[][]> {
  const sight = await sightOf(reach);
  const spans = new Map(pages.map(({ period }) => [spanOf(period), period]));
  const missed = new Map<string, OwnMissed | undefined>();
  for (const [span, period] of spans) {
    const months = monthsOfAll([period]);
    const measures = pages
      .filter((page) => spanOf(page.period) === span && page.criterion.byClinician)
      .map(({ criterion }) => criterionMeasure(criterion));
    missed.set(span, months && (await ownMissed(reach, sight, measures, months)));
  }
  return Promise.all(
    pages.map(async (page) => {
      const { criterion, period } = page;
      if (!criterion.byClinician) return [];
      const kept = missed.get(spanOf(period));
      if (!kept) return judged(reach, sight, page);
      const { visits, before } = ofPage(kept.of.get(criterionMeasure(criterion)) ?? [], page);
      if (visits.length === 0) return [];
      const lacking = kept.lackingAt(visits);
      return judged(reach, sight, { ...page, offset: page.offset - before }, { visits, lacking });
    }),
  );
}

/** Looked up once, however many pages are asked for. */
async function sightOf(reach: OwnReach): Promise<OwnSight> {
  const [protocol, practices] = await Promise.all([protocolWithin(reach), practicesOf(reach)]);
  return { protocol, practices };
}

function spanOf({ from, until }: Period): string {
  return `${from}..${until}`;
}

/** The visits of a page's units, and how many units are at visits before them. */
function ofPage(missed: Missed, { limit, offset }: MissesPage) {
  const visits: number[] = [];
  let before = 0;
  let seen = 0;
  for (const { visit, units } of missed) {
    if (seen >= offset + limit) break;
    seen += units;
    if (seen <= offset) before = seen;
    else visits.push(visit);
  }
  return { visits, before };
}

/** A page from the records, whatever is kept. */
export async function recomputed(reach: OwnReach, page: MissesPage): Promise<Miss[]> {
  return judged(reach, await sightOf(reach), page);
}

/** Of some visits, with what is known to be lacking there; else of all in the period. */
async function judged(
  reach: OwnReach,
  { protocol, practices }: OwnSight,
  { criterion, period, limit, offset }: MissesPage,
  some?: { readonly visits: readonly number[]; readonly lacking: Lacking | undefined },
): Promise<Miss[]> {
  const parameters = new Parameters([
    reach.clinicianKey,
    period.from,
    period.until,
    limit,
    offset,
    practices,
  ]);
  const at = some ? ` and visit_id = any(${parameters.bind(some.visits, "bigint[]")})` : "";
  const judging = { protocol, parameters, lacking: some?.lacking };
  const units = fillIn(criterionUnits(criterion.id, judging, { evidence: true }), {
    place: `practice = any($6::text[]) and local_day >= $2 and local_day < $3${at}`,
    whose: "worker = $1",
  });
  const { rows } = await pool().query<Miss>(
    `select u.practice, v.session_id as "sessionId", u.local_day::text as day, v.tooth, u.canal, u.seq, u.missing, u.evidence
    from (${units}) u join sessions v on v.id = u.visit_id
    where u.excluded is null and u.excepted is null and not u.met
    order by u.local_day desc, v.started_at desc, v.id, u.canal, u.seq limit $4 offset $5`,
    parameters.values,
  );
  return rows;
}
