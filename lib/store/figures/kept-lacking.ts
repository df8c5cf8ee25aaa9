import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import { criterionId } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { listsIn } from "@/lib/protocol/looked-at";
import type { Protocol } from "@/lib/protocol/protocol";
import { type Period, quarterOf, shifted } from "@/lib/records/period";
import { pool } from "../database";
import { revision } from "../facts/revision";
import { protocolWithin } from "../protocol/versions";
import { fillIn } from "./criterion/fill-in";
import { Parameters } from "./criterion/parameters";
import { type Lacking, lackingSql } from "./criterion/units-sql";

/** Quarters kept of a process; the oldest goes when there are too many. One of 100 000 visits takes some megabytes. */
const most = 80;
const quarters = new Map<string, Promise<Lacking>>();

/**
 * What the other criteria lack at the visits of the periods, where one of the measures looks at that; undefined where
 * none does, or for a clinician, whose few visits are looked at by the query itself. To find it out every other
 * criterion is judged, so it is found out once a quarter and kept until the records change.
 */
export async function keptLacking(
  reach: FiguresReach | OwnReach,
  protocol: Protocol,
  measures: readonly string[],
  periods: readonly Period[],
): Promise<Lacking | undefined> {
  if ("clinicianKey" in reach || !measures.some((measure) => looksAtGaps(protocol, measure)))
    return undefined;
  const from = periods.map((period) => period.from).sort()[0];
  const until = periods
    .map((period) => period.until)
    .sort()
    .at(-1);
  if (from === undefined || until === undefined) return undefined;
  for (let before = await revision(reach); ; ) {
    const at = before;
    const asked = await recordedQuarters(reach, from, until);
    const found = await Promise.all(ofQuarters(reach, `${process.env.DATABASE_URL} ${at}`, asked));
    const after = await revision(reach);
    // What was found while the records changed is of neither state.
    if (after === at) return joined(found);
    before = after;
  }
}

function looksAtGaps(protocol: Protocol, measure: string): boolean {
  const id = criterionId(measure);
  return (
    id !== undefined &&
    [...defaults, ...protocol.versions.map(({ criterion }) => criterion)].some(
      (criterion) => criterion.id === id && listsIn(criterion.met).includes("gaps"),
    )
  );
}

/** The quarters that the span touches and that have visits. */
async function recordedQuarters(
  reach: FiguresReach,
  from: string,
  until: string,
): Promise<Period[]> {
  const { rows } = await pool().query<{ first: string | null; last: string | null }>(
    `select min(local_day)::text as first, max(local_day)::text as last from visit_facts
     where ($1::text[] is null or practice = any($1)) and local_day >= $2::date and local_day < $3::date`,
    [reach.practices, from, until],
  );
  const [{ first, last } = { first: null, last: null }] = rows;
  if (first === null || last === null) return [];
  const found: Period[] = [];
  for (let one = quarterOf(first); one.from <= last; one = shifted(one, 1)) found.push(one);
  return found;
}

/** Of each quarter, those not known yet found out in two queries side by side: planning one takes as long as judging a quarter. */
function ofQuarters(reach: FiguresReach, at: string, asked: readonly Period[]): Promise<Lacking>[] {
  // What was kept of other revisions is asked for no more.
  for (const key of [...quarters.keys()]) if (!key.startsWith(`${at} `)) quarters.delete(key);
  const keyOf = ({ from }: Period) => `${at} ${JSON.stringify([reach.practices, from])}`;
  const missing = asked.filter((one) => !quarters.has(keyOf(one)));
  const half = Math.ceil(missing.length / 2);
  for (const some of [missing.slice(0, half), missing.slice(half)]) {
    const found = lackingIn(reach, some);
    for (const one of some) {
      const key = keyOf(one);
      const its = found.then((byQuarter) => byQuarter.get(one.from) ?? none);
      quarters.set(key, its);
      its.catch(() => quarters.delete(key));
    }
  }
  const answers = asked.map((one) => quarters.get(keyOf(one)) ?? Promise.resolve(none));
  for (const key of [...quarters.keys()].slice(0, Math.max(0, quarters.size - most)))
    quarters.delete(key);
  return answers;
}

const none: Lacking = { visits: "{}", criteria: "{}" };

/** By the first day of the quarter. The quarters are in order, and what lies between them is looked at too. */
async function lackingIn(
  reach: FiguresReach,
  some: readonly Period[],
): Promise<ReadonlyMap<string, Lacking>> {
  const [first, last] = [some[0], some.at(-1)];
  if (!first || !last) return new Map();
  const parameters = new Parameters([reach.practices, first.from, last.until]);
  const sql = fillIn(lackingSql({ protocol: await protocolWithin(reach), parameters }), {
    place:
      "($1::text[] is null or practice = any($1)) and local_day >= $2::date and local_day < $3::date",
    whose: "true",
  });
  // As text, which takes a tenth of the memory of a list here and goes back to the database as it came.
  const { rows } = await pool().query<Lacking & { quarter: string }>(
    `select date_trunc('quarter', f.local_day)::date::text as quarter,
       array_agg(visit_id order by visit_id, place)::text as visits, array_agg(criterion order by visit_id, place)::text as criteria
     from (${sql}) g join visit_facts f using (visit_id) group by 1`,
    parameters.values,
  );
  return new Map(rows.map(({ quarter, visits, criteria }) => [quarter, { visits, criteria }]));
}

function joined(parts: readonly Lacking[]): Lacking {
  return {
    visits: oneArray(parts.map(({ visits }) => visits)),
    criteria: oneArray(parts.map(({ criteria }) => criteria)),
  };
}

function oneArray(arrays: readonly string[]): string {
  return `{${arrays.flatMap((array) => (array === "{}" ? [] : [array.slice(1, -1)])).join(",")}}`;
}
