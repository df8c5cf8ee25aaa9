import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { Period } from "@/lib/records/period";
import { pool } from "../database";
import type { SafetyWhat } from "./safety-events";
import { safetyItems } from "./safety-sql";

/** A safety item with the visit, for whoever may see single visits. */
export type SafetyItem = {
  readonly what: SafetyWhat;
  /** Kind of incident; of a contact "time" or "seq", by which the deliveries were put in order. */
  readonly kind: string;
  readonly practice: string;
  readonly chair: string;
  readonly sessionId: string;
  readonly zone: string;
  readonly tooth: string;
  /** Local day of the visit, YYYY-MM-DD. */
  readonly day: string;
  readonly clinician: string;
  /** Empty for an incident. */
  readonly canal: string;
  readonly seq: number | null;
  readonly events: number;
  readonly patientTold: boolean | null;
  readonly reported: boolean | null;
  readonly management: string | null;
  readonly third: string | null;
  readonly fragmentMm: number | null;
  /** Of a contact: the delivery before, and the times of both in ISO 8601 where they have one. */
  readonly met: {
    readonly first: "naocl" | "chx";
    readonly canalBefore: string;
    readonly seqBefore: number;
    readonly startedBefore: string | null;
    readonly startedAt: string | null;
  } | null;
};

/** What the list can be narrowed to. */
export const safetyKinds = [
  "contact",
  "separation-untold",
  "separation-pending",
  "incident",
] as const;
export type SafetyKind = (typeof safetyKinds)[number];

export type SafetyAsked = {
  readonly period: Period;
  readonly kind?: SafetyKind | undefined;
  /** Only what is still to be done or written down. */
  readonly open: boolean;
  /** Key of a clinician. */
  readonly worker?: string | undefined;
  readonly limit: number;
  readonly offset: number;
};

/** How many items of a kind there are in the period, narrowed by nothing else. */
export type SafetyTotals = Readonly<Record<SafetyKind | "open", number>>;

/** Whose items there are. */
export type SafetyWorker = { readonly key: string; readonly code: string };

/**
 * A page of the safety items within a reach, latest first, how many there are like that, the totals of the period,
 * and the clinicians who have any. By a reach of one's own, one's own items alone.
 */
export async function safetyList(
  reach: FiguresReach | OwnReach,
  { period, kind, open, worker, limit, offset }: SafetyAsked,
): Promise<{ items: SafetyItem[]; all: number; totals: SafetyTotals; workers: SafetyWorker[] }> {
  const own = "clinicianKey" in reach;
  if (!own && !reach.byClinician) throw new RangeError("this reach does not tell clinicians apart");
  const scope = [
    own ? null : reach.practices,
    period.from,
    period.until,
    own ? reach.clinicianKey : null,
  ];
  const [items, totals, workers] = await Promise.all([
    pool().query<SafetyItem & { all: number }>(
      `${mine}, chosen as (
         select * from mine where ($5::text is null or $5 = any(workers)) and (not $6::boolean or open)
           and ($7::text is null or case $7 when 'separation-untold' then untold when 'separation-pending' then pending else what = $7 end)
       )
       select c.what, c.kind, c.practice, c.chair, v.session_id as "sessionId", p.zone, v.tooth, c.local_day::text as day, c.clinician,
         c.canal, c.seq, c.events, c.told as "patientTold", c.reported, c.management, c.third, c.fragment_mm as "fragmentMm", c.met,
         (select count(*)::int from chosen) as all
       from chosen c join sessions v on v.id = c.visit_id join practices p on p.code = c.practice
       order by c.local_day desc, c.practice, v.started_at desc, v.id, c.what, c.kind, c.canal, c.seq limit $8 offset $9`,
      [...scope, worker ?? null, open, kind ?? null, limit, offset],
    ),
    pool().query<SafetyTotals>(
      `${mine} select coalesce(sum(events) filter (where what = 'contact'), 0)::int as contact,
         coalesce(sum(events) filter (where untold), 0)::int as "separation-untold", coalesce(sum(events) filter (where pending), 0)::int as "separation-pending",
         coalesce(sum(events) filter (where what = 'incident'), 0)::int as incident, count(*) filter (where open)::int as open from mine`,
      scope,
    ),
    pool().query<SafetyWorker>(
      `${mine}, whose as (select distinct unnest(workers) as key from mine)
       select w.key, (select string_agg(distinct s.code, ', ') from (
         select clinician as code from visits where worker = w.key
         union select c.clinician from canal_facts c join visits using (visit_id) where c.worker = w.key) s) as code
       from whose w order by 2, 1`,
      scope,
    ),
  ]);
  const none: SafetyTotals = {
    contact: 0,
    "separation-untold": 0,
    "separation-pending": 0,
    incident: 0,
    open: 0,
  };
  return {
    items: items.rows.map(({ all: _, ...item }) => item),
    all: items.rows[0]?.all ?? 0,
    totals: totals.rows[0] ?? none,
    workers: workers.rows,
  };
}

/** A canal may be another's than the visit: who comes by any of both is looked at, and kept where it is theirs. */
const mine = `
with visits as (
  select visit_id, practice, chair, local_day, patient, worker, clinician from visit_facts f
  where ($1::text[] is null or practice = any($1)) and local_day >= $2::date and local_day < $3::date
    and ($4::text is null or worker = $4 or exists (select from canal_facts c where c.visit_id = f.visit_id and c.worker = $4))
), ${safetyItems}, mine as (
  select * from marked where $4::text is null or $4 = any(workers)
)`;
