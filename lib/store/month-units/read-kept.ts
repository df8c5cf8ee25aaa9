import type pg from "pg";
import type { Alike, MonthUnits, MonthVisits } from "@/lib/measures/units/alike";

/** The names under which a month's visits are kept: their patients, and whose they are. */
export const visitParts = ["patients", "visits"];

/** What is kept of practices and months, months without visits left out; of a measure not kept there are no units. */
export async function readKept(
  client: pg.ClientBase | pg.Pool,
  practices: readonly string[],
  months: readonly string[],
  measures: readonly string[],
  withVisits = false,
): Promise<MonthUnits[]> {
  const { rows } = await client.query<[string, string, string, string]>({
    text: `select practice, month::text, measure, content from month_units
      where practice = any($1::text[]) and month = any($2::date[]) and measure = any($3::text[])`,
    values: [practices, months, ["patients", ...(withVisits ? ["visits"] : []), ...measures]],
    rowMode: "array",
  });
  const found = new Map<string, Found>();
  for (const [practice, month, measure, content] of rows) {
    const key = `${practice}\n${month}`;
    const one: Found = found.get(key) ?? { practice, month, units: new Map() };
    found.set(key, one);
    if (measure === "patients") one.patients = JSON.parse(content);
    else if (measure === "visits") one.visits = JSON.parse(content);
    else one.units.set(measure, (JSON.parse(content) as Row[]).map(alikeOf));
  }
  return [...found.values()].flatMap(({ patients, ...one }) =>
    patients && (one.visits || !withVisits) ? [{ ...one, patients }] : [],
  );
}

type Found = {
  practice: string;
  month: string;
  patients?: number[];
  visits?: MonthVisits;
  units: Map<string, Alike[]>;
};

/** As `alike-sql` writes them. */
type Row = readonly [
  Alike["chair"],
  Alike["clinician"],
  Alike["worker"],
  Alike["shared"],
  Alike["excluded"],
  Alike["excepted"],
  Alike["units"],
  Alike["numerator"],
  Alike["denominator"],
  Alike["missing"],
  Alike["visits"],
  Alike["values"],
  Alike["measure"],
];

function alikeOf(row: Row): Alike {
  return {
    chair: row[0],
    clinician: row[1],
    worker: row[2],
    shared: row[3],
    excluded: row[4],
    excepted: row[5],
    units: row[6],
    numerator: row[7],
    denominator: row[8],
    missing: row[9],
    visits: row[10],
    values: row[11],
    measure: row[12],
  };
}
