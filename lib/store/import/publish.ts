import type pg from "pg";
import { type TableName, tableNames } from "@/lib/records/tables";
import { followRules } from "../corrections/by-rule";
import { recogniseEarlierVersions } from "../corrections/earlier-version";
import { renewFacts } from "../facts/renew-facts";
import { acceptNew } from "./accept";
import { holdUsesAfterSeparation } from "./after-separation";
import { findVisits } from "./find-visits";
import { findNamed, makeNamed } from "./named-visits";
import { addCanalClinicians, addPlaces } from "./places";
import { settleInRounds } from "./rounds";
import { countFiles, holdAsRead, holdJudged, witnessJudged } from "./settle";
import { settleHeld } from "./settle-held";
import { hangsOnVisit, list, storedKey } from "./stored-columns";
import { visitsOfHeld } from "./visits-of-held";

export type Publishing = {
  /** The import whose rows are staged; none when an undo judges anew. */
  readonly importId?: number;
  /** IANA zone of practices not yet known. */
  readonly zone: string;
  /** Practices whose rows may be brought in; null is all. */
  readonly practices: readonly string[] | null;
  /** Also judge anew rows that were held for a contradiction: after an undo the other row may be gone. */
  readonly afterUndo?: boolean;
};

/**
 * Makes the staged rows visible, together or not at all: the caller has begun the transaction. Parents go
 * first whatever the order of the files; rows that waited for a parent are judged again beside the new ones.
 */
export async function publish(client: pg.ClientBase, how: Publishing): Promise<void> {
  await beginPublishing(client);
  for (const table of tableNames) await publishTable(client, table, how);
  await endPublishing(client, how);
}

/** One publishing at a time, from here to the end of the transaction. */
export async function beginPublishing(client: pg.ClientBase): Promise<void> {
  await client.query("select pg_advisory_xact_lock(hashtext('canal-audit publish'))");
  await beginJudging(client);
}

async function beginJudging(client: pg.ClientBase): Promise<void> {
  await client.query("create temp table if not exists touched (visit_id bigint) on commit drop");
  await client.query("create temp table if not exists mending (held_id bigint) on commit drop");
  await client.query("create temp table rows_of (practice text) on commit drop");
  await makeNamed(client);
}

/** Judges the staged rows of one table, all of which are there; so are its parents', judged before. */
export async function publishTable(
  client: pg.ClientBase,
  table: TableName,
  how: Publishing,
): Promise<void> {
  await stageAgain(client, table, how.afterUndo === true);
  const { rows } = await client.query(`select exists (select from staged_${table}) as any`);
  if (!rows[0].any) return;
  // A small sample will do: it says how many rows there are, and of about how many visits.
  await client.query(
    `set default_statistics_target = 10; analyze staged_${table} (${list(placing(table))}); reset default_statistics_target`,
  );
  if (hangsOnVisit(table)) {
    await findVisits(client, table);
    await findNamed(client, table);
  } else await addPlaces(client, table, how);
  await acceptNew(client, table, how.practices);
  await settleInRounds(client, table);
  await witnessJudged(client, table);
  await recogniseEarlierVersions(client, table);
  await holdJudged(client, table);
  await settleHeld(client, table);
  await touch(client, table);
  await client.query(practicesOf(table));
  if (table === "instruments") await holdUsesAfterSeparation(client);
  await countFiles(client, table);
}

/** What rests on all tables: rows that the checks held, the facts, and what the practices' rules say of newer versions. */
export async function endPublishing(client: pg.ClientBase, how: Publishing): Promise<void> {
  await endJudging(client, how);
  if (how.importId === undefined || !(await followRules(client, how.importId))) return;
  await forgetJudging(client);
  await beginJudging(client);
  const anew = { zone: how.zone, practices: null, afterUndo: true };
  for (const table of tableNames) await publishTable(client, table, anew);
  await endJudging(client, anew);
}

async function endJudging(client: pg.ClientBase, how: Publishing): Promise<void> {
  await holdAsRead(client);
  if (how.importId !== undefined) await noteDone(client, how.importId);
  await renewFacts(client);
  await addCanalClinicians(client);
}

/** Clears what one judging leaves in the transaction, so that there can be another. */
async function forgetJudging(client: pg.ClientBase) {
  const left = tableNames.flatMap((table) => [
    `judged_${table}`,
    `came_${table}`,
    `again_${table}`,
    `holding_${table}`,
  ]);
  await client.query(
    `drop table if exists ${[...left, "holding_as_read", "rows_of", "named_visits", "renewing", "spells"].map((name) => `pg_temp.${name}`).join(", ")}`,
  );
  await client.query(
    `truncate ${[...tableNames, "held"].map((name) => `pg_temp.staged_${name}`).join(", ")}`,
  );
}

/** Stages held rows that only their relation to other rows kept out, where that may have changed, and those being mended. */
async function stageAgain(client: pg.ClientBase, table: TableName, afterUndo: boolean) {
  const kinds = afterUndo
    ? "kind not in ('check', 'outside-reach')"
    : "kind in ('waiting', 'several-visits')";
  const parentCame = hangsOnVisit(table)
    ? "and (h.values -> 'match' is not null or exists (select from sessions v where v.session_id = h.session_id))"
    : "";
  await client.query(`
    insert into staged_${table}
    select (jsonb_populate_record(null::staged_${table}, h.values
      || jsonb_build_object('file_id', h.file_id, 'line', h.line, 'held_id', h.id))).*
    from held h where h.table_name = '${table}' and h.state = 'held' and h.values is not null
      and (h.kind = 'mending' or (${kinds} ${parentCame}))`);
  if (hangsOnVisit(table))
    await client.query(
      `insert into touched ${visitsOfHeld(`h.id in (select held_id from staged_${table}) and h.kind = 'several-visits'`)}`,
    );
}

/** Notes the visits whose derived figures are to be renewed; new visits are noted already. */
async function touch(client: pg.ClientBase, table: TableName) {
  if (hangsOnVisit(table)) {
    await client.query(
      `insert into touched select distinct visit_id from came_${table}
       union select visit_id from judged_${table} where visit_id is not null`,
    );
    await client.query(
      `insert into touched select c.id::bigint from judged_${table} j cross join jsonb_array_elements_text(j.candidate_visits) c (id)`,
    );
  } else if (table === "sessions") {
    await client.query(
      `insert into touched select v.id from judged_sessions j join sessions v using (practice, session_id)`,
    );
  } else if (table === "people") {
    await client.query(
      `insert into touched select v.id from (select practice, code from came_people union select practice, code from judged_people) j
       join sessions v using (practice)
       where v.clinician = j.code or exists (select from canals c where c.visit_id = v.id and c.clinician = j.code)`,
    );
  }
}

/** The import is done when its rows are visible; whose rows it held is kept, as who may see it follows from that. */
async function noteDone(client: pg.ClientBase, importId: number) {
  await client.query(
    `update imports set state = 'done', finished_at = now(), practices = array(
       select practice from rows_of union select practice from staged_held where practice is not null order by 1)
     where id = $1`,
    [importId],
  );
}

function practicesOf(table: TableName): string {
  const placed = hangsOnVisit(table) ? "visit_id" : "practice";
  const read = `select ${placed} from came_${table} union select ${placed} from judged_${table} where held_id is null`;
  return hangsOnVisit(table)
    ? `insert into rows_of select distinct v.practice from (${read}) r join sessions v on v.id = r.visit_id`
    : `insert into rows_of ${read}`;
}

/** What a row's visit and practice are found by, and whether it was held. */
function placing(table: TableName): string[] {
  return [...(hangsOnVisit(table) ? ["session_id", "practice"] : storedKey(table)), "held_id"];
}
