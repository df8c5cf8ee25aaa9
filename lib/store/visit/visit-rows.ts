import type { Values } from "@/lib/records/column";
import type { Place, Reason } from "@/lib/records/reason";
import type { TableName } from "@/lib/records/tables";
import { pool } from "../database";
import type { VisitHead } from "./visit-head";

/** A record row of a visit, where it was first seen and where again. */
export type VisitRow = {
  readonly table: TableName;
  readonly id: string;
  /** What is recorded, by column; instants in ISO 8601. The patient is a short pseudonym. */
  readonly values: Values;
  readonly place: Place;
  readonly witnesses: readonly Place[];
};

/** A row that names the visit and is held: it counts in no figure. */
export type HeldOfVisit = {
  readonly table: TableName;
  readonly key: string;
  readonly place: Place;
  readonly reasons: readonly Reason[];
};

const hanging: readonly TableName[] = [
  "canals",
  "irrigation",
  "instruments",
  "followups",
  "steps",
  "exceptions",
  "incidents",
];

/** Every accepted row of a visit, and its chair's upkeep of the day. Only a head that was within reach leads here. */
export async function visitRows(head: VisitHead): Promise<VisitRow[]> {
  const parts = [
    rowsOf(
      "sessions",
      "t.id = $1",
      "- 'patient' - 'local_day' || jsonb_build_object('patient', left(t.patient, 8))",
    ),
    ...hanging.map((table) => rowsOf(table, "t.visit_id = $1")),
    rowsOf("upkeep", "t.practice = $2 and t.chair = $3 and t.day = $4"),
  ];
  const { rows } = await pool().query<VisitRow>(parts.join("\nunion all\n"), [
    head.id,
    head.practice,
    head.chair,
    head.day,
  ]);
  return rows;
}

/** The held rows that name the visit, or may belong to it. */
export async function heldOfVisit(head: VisitHead): Promise<HeldOfVisit[]> {
  const { rows } = await pool().query<HeldOfVisit>(
    `select h.table_name as "table", h.key, jsonb_build_object('file', f.name, 'line', h.line) as place, h.reasons
    from held h join import_files f on f.id = h.file_id
    where (h.session_id = $1 and (h.practice is null or h.practice = $2)
      or h.kind = 'several-visits' and h.values -> 'candidate_visits' @> to_jsonb($3::bigint)) and h.state = 'held' order by h.file_id, h.line`,
    [head.sessionId, head.practice, head.id],
  );
  return rows;
}

function rowsOf(table: TableName, where: string, change = ""): string {
  return `
    select '${table}' as "table", t.id::text, jsonb_strip_nulls(to_jsonb(t) - array['id', 'file_id', 'line', 'fields', 'visit_id'] ${change}) as values,
      jsonb_build_object('file', f.name, 'line', t.line) as place,
      (select coalesce(jsonb_agg(jsonb_build_object('file', wf.name, 'line', w.line) order by w.file_id, w.line), '[]')
        from witnesses w join import_files wf on wf.id = w.file_id where w.table_name = '${table}' and w.row_id = t.id) as witnesses
    from "${table}" t join import_files f on f.id = t.file_id where ${where}`;
}
