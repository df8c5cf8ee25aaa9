import type pg from "pg";
import { raiseRevision } from "@/lib/store/facts/revision";

/** One canal as the figures see it; every field not named is that of a finished, prepared canal. */
export type FactRow = {
  readonly practice: string;
  readonly code: string;
  readonly worker?: string;
  readonly day: string;
  readonly volume?: number | null;
  readonly uses?: number;
  readonly separations?: number;
  readonly timerReset?: string | null;
  readonly exclusion?: string | null;
  readonly patient?: string;
  readonly tooth?: string;
  readonly curvature?: number | null;
  readonly treatment?: string;
};

/** Writes canals straight into the derived tables, one visit each, as a change of the records. */
export async function insertFacts(
  client: pg.Pool,
  rows: readonly FactRow[],
  firstVisit = 1,
): Promise<void> {
  for (const [place, row] of rows.entries()) {
    const visit = firstVisit + place;
    const worker = row.worker ?? `${row.practice}/${row.code}`;
    const { practice, code, day } = row;
    const [uses, separations, exclusion] = [
      row.uses ?? 1,
      row.separations ?? 0,
      row.exclusion ?? null,
    ];
    await client.query(
      "insert into practices (code, name, zone) values ($1, $1, 'UTC') on conflict do nothing",
      [practice],
    );
    await client.query(
      `insert into sessions (id, file_id, line, fields, practice, session_id, chair, clinician, patient, started_at, local_day, tooth,
         tooth_notation, treatment, outcome)
       values ($1::bigint, 1, 1, 0, $2, 'fact ' || $1::bigint, 'R1', $3, $4, $5::date, $5::date, $6, 'fdi', $7, 'completed')
       on conflict (id) do update set practice = excluded.practice, clinician = excluded.clinician, patient = excluded.patient,
         started_at = excluded.started_at, local_day = excluded.local_day, tooth = excluded.tooth, treatment = excluded.treatment`,
      [
        visit,
        practice,
        code,
        row.patient ?? "p",
        day,
        row.tooth ?? "11",
        row.treatment ?? "primary",
      ],
    );
    await client.query(
      `insert into canals (file_id, line, fields, visit_id, canal, preparation, timer_reset) values (1, 1, 0, $1, 'main', 'rotary', $2)
       on conflict (visit_id, canal) do update set timer_reset = excluded.timer_reset`,
      [visit, row.timerReset ?? null],
    );
    await client.query(
      `insert into canal_facts (visit_id, canal, practice, chair, clinician, worker, patient, local_day, tooth, treatment, exclusion,
         preparation, volume_ml, uses, separations, uses_unknown, uses_held, timer_reset, curvature_deg)
       values ($1, 'main', $2, 'R1', $3, $4, $11, $5, $12, $13, $6, 'rotary', $7, $8, $9, 0, 0, $10, $14)`,
      [
        visit,
        practice,
        code,
        worker,
        day,
        exclusion,
        row.volume ?? null,
        uses,
        separations,
        row.timerReset ?? null,
        row.patient ?? "p",
        row.tooth ?? "11",
        row.treatment ?? "primary",
        row.curvature ?? null,
      ],
    );
    await client.query(
      `insert into visit_facts (visit_id, practice, chair, clinician, worker, patient, local_day, treatment, outcome, exclusion,
         continuous, volume_ml, uses, separations, uses_unknown, uses_held)
       values ($1, $2, 'R1', $3, $4, $10, $5, 'primary', 'completed', $6, false, $7, $8, $9, 0, 0)`,
      [
        visit,
        practice,
        code,
        worker,
        day,
        exclusion,
        row.volume ?? null,
        uses,
        separations,
        row.patient ?? "p",
      ],
    );
  }
  const changing = await client.connect();
  await raiseRevision(changing);
  changing.release();
}
