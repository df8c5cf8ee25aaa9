import type pg from "pg";
import type { TableName } from "@/lib/records/tables";
import { heldVerdicts } from "./held-verdicts";
import { reasonsByVerdict } from "./judge";
import { asWritten } from "./relation-reasons";
import { repeatMended } from "./repeat-mended";
import { hangsOnVisit, storedKey } from "./stored-columns";

/** Keeps repeated and completing rows as further witnesses of the accepted one. */
export async function witnessJudged(client: pg.ClientBase, table: TableName) {
  await client.query(`
    insert into witnesses (table_name, row_id, file_id, line, fields)
    select '${table}', j.row_id, j.file_id, j.line, j.fields from judged_${table} j
    where j.verdict in ('repeated', 'completes') on conflict do nothing`);
}

/** Holds the rows that their relation to others keeps out, once each however often they come. */
export async function holdJudged(client: pg.ClientBase, table: TableName) {
  const key = storedKey(table).filter((name) => name !== "visit_id" && name !== "practice");
  const shownKey = [...(hangsOnVisit(table) ? ["session_id"] : []), ...key].map(
    (name) => `j."${name}"`,
  );
  const sessionId = hangsOnVisit(table) || table === "sessions" ? "j.session_id" : "null";
  const canal = key.includes("canal") ? "j.canal" : "null";
  const match = storedKey(table).map((name) => `e."${name}" = j."${name}"`);
  const values = `to_jsonb(j) - array['verdict','row_id','visit_id','in_practices','candidates','candidate_visits','held_id','file_id','line']`;
  const candidates = hangsOnVisit(table) ? "j.candidate_visits" : "null::jsonb";
  await client.query(`
    create temp table holding_${table} on commit drop as
    select n.*, exists (select from held h where h.digest = n.digest and h.state = 'mended') as mended from (
    select j.file_id, j.line, j.held_id, j.verdict, md5('${table}' || (${values})::text) as digest,
      j.practice, ${sessionId} as session_id, ${canal} as canal, concat_ws(' ', ${shownKey.join(", ")}) as key,
      ${asWritten(table)} as raw, ${values} as values, ${candidates} as candidates,
      ${reasonsByVerdict(table)} as reasons
    from judged_${table} j join import_files i on i.id = j.file_id
    left join "${table}" e on ${match.join(" and ")}
    where j.verdict in ${heldVerdicts}) n`);
  await client.query(`
    update held h set kind = n.verdict, reasons = n.reasons, values = ${withCandidates("h.values")}
    from holding_${table} n where n.held_id = h.id`);
  await client.query(`
    insert into held (table_name, digest, kind, practice, session_id, canal, key, raw, values, reasons, file_id, line)
    select distinct on (digest) '${table}', digest, verdict, practice, session_id, canal, key, raw, ${withCandidates("values")}, reasons, file_id, line
    from holding_${table} n where held_id is null order by digest, file_id, line
    on conflict (digest) do nothing`);
  await witnessHeld(client, `holding_${table}`);
}

/** SQL: the values of a row with the visits that it may belong to, where there are several. */
function withCandidates(values: string): string {
  return `(${values} - 'candidate_visits') || jsonb_strip_nulls(jsonb_build_object('candidate_visits', n.candidates))`;
}

/** Holds the rows that the checks refused. */
export async function holdAsRead(client: pg.ClientBase) {
  await client.query(`
    create temp table holding_as_read on commit drop as
    select s.*, null::bigint as held_id,
      md5(s.table_name || case when s.raw = '{}' then i.name || ' ' || s.line else s.raw::text end) as digest
    from staged_held s join import_files i on i.id = s.file_id`);
  await client.query(`
    insert into held (table_name, digest, kind, practice, session_id, canal, key, raw, reasons, file_id, line)
    select distinct on (digest) table_name, digest, 'check', practice, session_id, canal, key, raw, reasons, file_id, line
    from holding_as_read order by digest, file_id, line on conflict (digest) do nothing`);
  await witnessHeld(client, "holding_as_read");
  await client.query(`
    insert into touched select v.id from holding_as_read n join sessions v on v.session_id = n.session_id`);
  await client.query(`
    update import_files f set read = f.read + n.held + n.let_go + n.mended, held = f.held + n.held, let_go = f.let_go + n.let_go,
      repeated = f.repeated + n.mended
    from (select n.file_id, count(*) filter (where h.state not in ('let-go', 'mended')) as held,
      count(*) filter (where h.state = 'let-go') as let_go, count(*) filter (where h.state = 'mended') as mended
      from holding_as_read n join held h using (digest) group by n.file_id) n where n.file_id = f.id`);
}

/**
 * Adds this table's verdicts to the counts of the files now read. A row whose like was mended before is repeated; the places of one that
 * only joins now were moved with it (settle-held).
 */
export async function countFiles(client: pg.ClientBase, table: TableName) {
  await client.query(`
    update import_files f set read = f.read + n.rows, accepted = f.accepted + n.accepted,
      repeated = f.repeated + n.repeated + n.mended, held = f.held + n.held - n.let_go - n.mended, let_go = f.let_go + n.let_go
    from (
      select file_id, sum(rows) as rows, sum(accepted) as accepted, sum(repeated) as repeated, sum(held) as held,
        sum(let_go) as let_go, sum(mended) as mended
      from (
        select file_id, rows, rows as accepted, 0 as repeated, 0 as held, 0 as let_go, 0 as mended from came_${table}
        union all
        select j.file_id, 1, (j.verdict = 'completes')::int, (j.verdict = 'repeated')::int, (j.verdict in ${heldVerdicts})::int,
          (h.state is not distinct from 'let-go')::int, coalesce(n.mended, false)::int
        from judged_${table} j
        left join holding_${table} n on n.file_id = j.file_id and n.line = j.line
        left join held h on h.digest = n.digest
        where j.held_id is null
      ) of_rows group by file_id
    ) n where n.file_id = f.id`);
}

async function witnessHeld(client: pg.ClientBase, holding: string) {
  await client.query(`
    insert into witnesses (table_name, row_id, file_id, line, fields)
    select 'held', h.id, n.file_id, n.line, 0 from ${holding} n join held h using (digest)
    where n.held_id is null and h.state <> 'mended' and (n.file_id, n.line) <> (h.file_id, h.line) on conflict do nothing`);
  await repeatMended(client, holding);
}
