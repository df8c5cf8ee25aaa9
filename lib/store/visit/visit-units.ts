import type { FiguresReach, OwnReach } from "@/lib/access/reach";
import type { Criterion, Outcome } from "@/lib/protocol/criterion";
import type { JudgedUnit } from "@/lib/protocol/judged-unit";
import { spansWithin } from "@/lib/protocol/protocol";
import { dayAfter } from "@/lib/records/period";
import { pool } from "../database";
import { fillIn } from "../figures/criterion/fill-in";
import { Parameters } from "../figures/criterion/parameters";
import { criterionUnits, type Evidence } from "../figures/criterion/units-sql";
import { protocolWithin } from "../protocol/versions";
import type { VisitHead } from "./visit-head";

/** One unit of a criterion at a visit: where it is, all that is looked at, how the figures count it. */
export type VisitUnit = {
  /** In the version in force on the day. */
  readonly criterion: Criterion;
  /** Empty for the visit and for the chair's day. */
  readonly canal: string;
  /** Of a delivery or use, its number in the canal. */
  readonly seq: number | null;
  readonly unit: JudgedUnit;
  readonly counted: Outcome;
};

type Row = {
  canal: string | null;
  seq: number | null;
  evidence: Evidence;
  exception: string | null;
  outside: string | null;
  excluded: string | null;
  excepted: string | null;
  met: boolean;
  missing: boolean;
};

/** The units of criteria at a visit, by the same SQL that the figures count; of a chair's day, the day of the visit. */
export async function visitUnits(
  reach: FiguresReach | OwnReach,
  head: VisitHead,
  ids: readonly string[],
): Promise<VisitUnit[]> {
  const protocol = await protocolWithin(reach);
  const day = { from: head.day, until: dayAfter(head.day, 1) };
  const found = await Promise.all(
    ids.map(async (id) => {
      const [span] = spansWithin(protocol, id, [head.practice], day);
      if (!span) return [];
      const { criterion } = span;
      const chairDay = criterion.unit === "chair-day";
      const parameters = new Parameters([head.practice, head.day, chairDay ? head.chair : head.id]);
      const units = fillIn(criterionUnits(id, { protocol, parameters }, { evidence: true }), {
        place: `practice = $1 and local_day = $2 and ${chairDay ? "chair = $3" : "visit_id = $3::bigint"}`,
        whose: "true",
      });
      const { rows } = await pool().query<Row>(
        `select canal, seq, evidence, exception, outside, excluded, excepted, met, missing from (${units}) u where not shared order by canal, seq`,
        parameters.values,
      );
      return rows.map((row) => ({
        criterion,
        canal: row.canal ?? "",
        seq: row.seq,
        unit: { ...row.evidence, exclusion: row.outside, exception: row.exception },
        counted: countedAs(row),
      }));
    }),
  );
  return found.flat();
}

function countedAs(row: Row): Outcome {
  if (row.excluded !== null) return { outcome: "excluded", reason: row.excluded };
  if (row.excepted !== null) return { outcome: "excepted", reason: row.excepted };
  return { outcome: row.met ? "met" : row.missing ? "not recorded" : "not met" };
}
