import type { MonthUnits } from "@/lib/measures/units/alike";
import { pool } from "../database";
import { makeMonths } from "./make";
import { inMonth } from "./months-of";
import { readKept } from "./read-kept";

/**
 * The units of measures in every month of those given in which one of the practices (null is all) has visits: as they are kept,
 * and made and kept where they are not.
 */
export async function readMonths(
  practices: readonly string[] | null,
  months: readonly string[],
  measures: readonly string[],
  withVisits = false,
): Promise<MonthUnits[]> {
  for (;;) {
    const recorded = await recordedMonths(practices, months);
    const within = [...new Set(recorded.map(({ practice }) => practice))];
    const asked = [...new Set(recorded.map(({ month }) => month))];
    const kept = await readKept(pool(), within, asked, measures, withVisits);
    const whole = new Set(
      kept
        .filter(({ units }) => measures.every((measure) => units.has(measure)))
        .map(({ practice, month }) => `${practice}\n${month}`),
    );
    const lacking = recorded.filter(({ practice, month }) => !whole.has(`${practice}\n${month}`));
    if (lacking.length === 0) return kept;
    await makeMonths(
      [...new Set(lacking.map(({ practice }) => practice))],
      [...new Set(lacking.map(({ month }) => month))],
      measures,
    );
  }
}

/** Makes what is not kept yet of the months in which one of the practices (null is all) has visits. */
export async function keepMonths(
  practices: readonly string[] | null,
  months: readonly string[],
  measures: readonly string[],
): Promise<void> {
  const recorded = await recordedMonths(practices, months);
  await makeMonths(
    [...new Set(recorded.map(({ practice }) => practice))],
    [...new Set(recorded.map(({ month }) => month))],
    measures,
  );
}

async function recordedMonths(
  practices: readonly string[] | null,
  months: readonly string[],
): Promise<{ practice: string; month: string }[]> {
  const { rows } = await pool().query<{ practice: string; month: string }>(
    `select p.code as practice, m.month::text as month from practices p cross join unnest($2::date[]) m(month)
     where ($1::text[] is null or p.code = any($1))
       and (exists (select from month_units k where k.practice = p.code and k.month = m.month and k.measure = 'patients')
         or exists (select from visit_facts f where f.practice = p.code and ${inMonth("m")}))
     order by 1, 2`,
    [practices, months],
  );
  return rows;
}
