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
