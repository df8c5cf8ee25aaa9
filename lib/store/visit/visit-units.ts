import type { Criterion, Outcome } from "@/lib/protocol/criterion";
import type { Values } from "@/lib/records/column";
import { pool } from "../database";
import { criterionUnits } from "../figures/criterion-sql";
import type { VisitHead } from "./visit-head";

/** One unit of a criterion at a visit: its canal (empty for the visit or the chair's day), what is looked at, how the figures count it. */
export type VisitUnit = {
  readonly criterion: Criterion;
  readonly canal: string;
  readonly fields: Values;
  readonly counted: Outcome;
};

type Row = {
  canal: string | null;
  fields: Values;
  excluded: string | null;
  excepted: string | null;
  met: boolean;
  missing: boolean;
};

/** The units of the criteria at a visit, by the same SQL that the figures count; of a chair's day, the day of the visit. */
export async function visitUnits(
  head: VisitHead,
  criteria: readonly Criterion[],
): Promise<VisitUnit[]> {
  const found = await Promise.all(criteria.map((criterion) => unitsOf(head, criterion)));
  return found.flat();
}

async function unitsOf(head: VisitHead, criterion: Criterion): Promise<VisitUnit[]> {
  const place = criterion.unit === "chair-day" ? "chair = $3" : "visit_id = $3::bigint";
  const within = `practice = $1 and local_day = $2 and ${place}`;
  const { rows } = await pool().query<Row>(
    `select canal, fields, excluded, excepted, met, missing from (${criterionUnits(criterion).replaceAll("{within}", within)}) u order by canal`,
    [head.practice, head.day, criterion.unit === "chair-day" ? head.chair : head.id],
  );
  return rows.map((row) => ({
    criterion,
    canal: row.canal ?? "",
    fields: row.fields,
    counted: countedAs(row),
  }));
}

function countedAs(row: Row): Outcome {
  if (row.excluded !== null) return { outcome: "excluded", reason: row.excluded };
  if (row.excepted !== null) return { outcome: "excepted", reason: row.excepted };
  return { outcome: row.met ? "met" : row.missing ? "not recorded" : "not met" };
}
