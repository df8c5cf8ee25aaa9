import type pg from "pg";
import { raiseRevision } from "@/lib/store/facts/revision";

/** A visit with its canals; what is not named is that of a front tooth in first treatment with one use, known. */
export type PlacedVisit = {
  readonly code?: string;
  readonly practice?: string;
  /** With its time zone. */
  readonly at: string;
  readonly canals: Readonly<Record<string, PlacedCanal>>;
};

export type PlacedCanal = {
  readonly tooth?: string;
  readonly curvature?: number;
  readonly separations?: number;
  readonly uses?: number;
  readonly unknown?: number;
  readonly held?: number;
};

/** Writes visits and what is derived of their canals straight into the tables, in the order given. */
export async function placeVisits(client: pg.Pool, visits: readonly PlacedVisit[]): Promise<void> {
  for (const { at, canals, ...of } of visits) {
    const [practice, code] = [of.practice ?? "NORTH", of.code ?? "A1"];
    const [worker, day] = [`${practice}/${code}`, at.slice(0, 10)];
    await client.query(
      "insert into practices (code, name, zone) values ($1, $1, 'UTC') on conflict do nothing",
      [practice],
    );
    const { rows } = await client.query<{ id: string }>(
      `insert into sessions (file_id, line, fields, practice, session_id, chair, clinician, patient, started_at, local_day, tooth,
         tooth_notation, treatment, outcome)
       values (1, 1, 0, $1, 's' || currval('sessions_id_seq'), 'R1', $2, 'p', $3, $4, '11', 'iso', 'primary', 'completed')
       returning id`,
      [practice, code, at, day],
    );
    const id = rows[0]?.id;
    const some = Object.entries(canals);
    for (const [canal, one] of some) {
      await client.query(
        "insert into canals (file_id, line, fields, visit_id, canal, preparation) values (1, 1, 0, $1, $2, 'rotary')",
        [id, canal],
      );
      await client.query(
        `insert into canal_facts (visit_id, canal, practice, chair, clinician, worker, patient, local_day, tooth, treatment,
           preparation, uses, separations, uses_unknown, uses_held, curvature_deg)
         values ($1, $2, $3, 'R1', $4, $5, 'p', $6, $7, 'primary', 'rotary', $8, $9, $10, $11, $12)`,
        [
          id,
          canal,
          practice,
          code,
          worker,
          day,
          one.tooth ?? "11",
          ...countsOf([one]),
          one.curvature ?? null,
        ],
      );
    }
    await client.query(
      `insert into visit_facts (visit_id, practice, chair, clinician, worker, patient, local_day, treatment, outcome, continuous,
         uses, separations, uses_unknown, uses_held)
       values ($1, $2, 'R1', $3, $4, 'p', $5, 'primary', 'completed', false, $6, $7, $8, $9)`,
      [id, practice, code, worker, day, ...countsOf(some.map(([, one]) => one))],
    );
  }
  const changing = await client.connect();
  await raiseRevision(changing);
  changing.release();
}

function countsOf(canals: readonly PlacedCanal[]): number[] {
  const sum = (of: (canal: PlacedCanal) => number) =>
    canals.reduce((all, canal) => all + of(canal), 0);
  return [
    sum(({ uses }) => uses ?? 1),
    sum(({ separations }) => separations ?? 0),
    sum(({ unknown }) => unknown ?? 0),
    sum(({ held }) => held ?? 0),
  ];
}
