import type pg from "pg";
import { criterionId } from "@/lib/protocol/criterion";
import { listsIn } from "@/lib/protocol/looked-at";
import { type Protocol, spansOf } from "@/lib/protocol/protocol";
import { pool } from "../database";
import { Parameters } from "../figures/criterion/parameters";
import type { Tables } from "../figures/criterion/tables";
import { inTransaction } from "../import/run-import";
import { storedVersions } from "../protocol/versions";
import { asHolder } from "../wall/as-whom";
import { alikeSql, patientsSql, visitsSql } from "./alike-sql";
import { copied, dropCopies } from "./copies";
import { lackingOf, measuresOfLacking } from "./lacking-of";
import { inMonth, nextMonth } from "./months-of";
import { readKept, visitParts } from "./read-kept";

type Missing = { readonly practice: string; readonly month: string; readonly measure: string };

/**
 * Judges and counts the units of the practices, months and measures that are not kept yet, and keeps them, a few months at a
 * time. Whoever changes the records waits meanwhile, so that all of it is of one state of the records. It is done past the wall, as
 * what is kept of a practice is the same whoever asks first, and leaves nothing with them.
 */
export async function makeMonths(
  practices: readonly string[],
  months: readonly string[],
  measures: readonly string[],
): Promise<void> {
  await asHolder(() => made(practices, months, measures));
}

async function made(
  practices: readonly string[],
  months: readonly string[],
  measures: readonly string[],
): Promise<void> {
  const client = await pool().connect();
  try {
    const inOrder = [...months].sort();
    for (let at = 0; at < inOrder.length; at += atATime)
      await inTransaction(client, async () => {
        await client.query("select month_units_lock()");
        const some = inOrder.slice(at, at + atATime);
        await makeWithin(client, practices, some, [...visitParts, ...measures]);
      });
  } finally {
    client.release();
  }
}

const atATime = 3;

async function makeWithin(
  client: pg.ClientBase,
  practices: readonly string[],
  months: readonly string[],
  parts: readonly string[],
  before?: Tables,
): Promise<void> {
  const protocol = await storedVersions(client, practices);
  const lists = (part: string) => looksAtGaps(protocol, part);
  // What looks at what the other criteria lack comes after them.
  const ordered = [...parts.filter((part) => !lists(part)), ...parts.filter(lists)];
  const missing = await missingOf(client, practices, months, ordered);
  const criteria = new Set(
    missing.flatMap(({ measure }) => (criterionId(measure) === undefined ? [] : [measure])),
  );
  const copies = before ?? (await copied(client, practices, months, criteria.size));
  for (const part of ordered) {
    const its = missing.filter(({ measure }) => measure === part);
    for (const run of runsOf(its)) await makeRun(client, protocol, part, run, copies);
    await client.query(
      `insert into month_units (practice, month, measure, content)
       select practice, month, $3, '[]' from unnest($1::text[], $2::date[]) m(practice, month) on conflict do nothing`,
      [its.map(({ practice }) => practice), its.map(({ month }) => month), part],
    );
  }
  if (copies && !before) await dropCopies(client);
}

type Run = { readonly practices: readonly string[]; readonly months: readonly string[] };

async function makeRun(
  client: pg.ClientBase,
  protocol: Protocol,
  part: string,
  run: Run,
  copies: Tables | undefined,
) {
  const [first, last] = [run.months[0], run.months.at(-1)];
  if (first === undefined || last === undefined) return;
  const parameters = new Parameters([run.practices, first, nextMonth(last)]);
  const lacking = looksAtGaps(protocol, part)
    ? await lackingWithin(client, protocol, run, copies)
    : undefined;
  const sql = ofVisits[part] ?? alikeSql(part, { protocol, parameters, lacking, copies });
  // Asked by itself and put in afterwards, as PostgreSQL works on several processors only where nothing is written.
  const { rows } = await client.query<{ practice: string; month: string; content: string }>(
    sql,
    parameters.values,
  );
  await client.query(
    `insert into month_units (practice, month, measure, content, pending)
     select practice, month, $4, content, ${restsOnLastDay(protocol, part) ? pending : "false"}
     from unnest($1::text[], $2::date[], $3::text[]) made(practice, month, content) on conflict do nothing`,
    [
      rows.map(({ practice }) => practice),
      rows.map(({ month }) => month),
      rows.map(({ content }) => content),
      part,
    ],
  );
}

const ofVisits: Readonly<Record<string, string>> = { patients: patientsSql, visits: visitsSql };

/** What the other criteria lack, by their own units; undefined where the query has to find it out. */
async function lackingWithin(
  client: pg.ClientBase,
  protocol: Protocol,
  run: Run,
  copies: Tables | undefined,
) {
  const measures = measuresOfLacking(protocol);
  if (!measures) return undefined;
  await makeWithin(client, run.practices, run.months, [...visitParts, ...measures], copies);
  return lackingOf(protocol, await readKept(client, run.practices, run.months, measures, true));
}

/** SQL: the month has a separation that was pending, and may be so still. */
const pending = `exists (select from visit_facts f join instruments i using (visit_id) where f.practice = made.practice
  and ${inMonth("made")} and i.separated > 0 and i.management = 'pending')`;

/** How long a separation has been pending follows from the last day of the practice's records. */
function restsOnLastDay(protocol: Protocol, measure: string): boolean {
  const id = criterionId(measure);
  return (
    id !== undefined &&
    (looksAtGaps(protocol, measure) ||
      spansOf(protocol, id).some(({ criterion }) => criterion.unit === "separation"))
  );
}

function looksAtGaps(protocol: Protocol, measure: string): boolean {
  const id = criterionId(measure);
  return (
    id !== undefined &&
    spansOf(protocol, id).some(({ criterion }) => listsIn(criterion.met).includes("gaps"))
  );
}

async function missingOf(
  client: pg.ClientBase,
  practices: readonly string[],
  months: readonly string[],
  parts: readonly string[],
): Promise<Missing[]> {
  const { rows } = await client.query<Missing>(
    `select p.practice, m.month::text as month, q.measure
     from unnest($1::text[]) p(practice) cross join unnest($2::date[]) m(month) cross join unnest($3::text[]) q(measure)
     where exists (select from visit_facts f where f.practice = p.practice and ${inMonth("m")})
       and not exists (select from month_units k where k.practice = p.practice and k.month = m.month and k.measure = q.measure)
     order by 3, 2, 1`,
    [practices, months, parts],
  );
  return rows;
}

/** Months that follow each other, as many as are made together, and whoever misses one of them. */
function runsOf(missing: readonly Missing[]): Run[] {
  const months = [...new Set(missing.map(({ month }) => month))].sort();
  const runs: string[][] = [];
  for (const month of months) {
    const run = runs.at(-1);
    const before = run?.at(-1);
    if (run && run.length < atATime && before !== undefined && nextMonth(before) === month)
      run.push(month);
    else runs.push([month]);
  }
  return runs.map((run) => ({
    months: run,
    practices: [
      ...new Set(
        missing.filter(({ month }) => run.includes(month)).map(({ practice }) => practice),
      ),
    ],
  }));
}
