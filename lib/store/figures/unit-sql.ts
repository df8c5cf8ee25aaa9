import type { StratumKind } from "@/lib/measures/tally";
import { criterionId } from "@/lib/protocol/criterion";
import { criterionUnits, type Judging } from "./criterion/units-sql";
import { stratumMark, stratumOf } from "./stratum-sql";

/** Where a continuous measure's value is kept; null there is not recorded. */
const continuous: Record<string, { table: string; column: string }> = {
  "irrigation-time": { table: "canal_facts", column: "flow_s" },
  "hypochlorite-time": { table: "canal_facts", column: "hypochlorite_s" },
  "dwell-time": { table: "canal_facts", column: "dwell_s" },
  "activation-time": { table: "canal_facts", column: "activation_s" },
  volume: { table: "canal_facts", column: "volume_ml" },
  "hypochlorite-volume": { table: "canal_facts", column: "hypochlorite_ml" },
  "volume-per-visit": { table: "visit_facts", column: "volume_ml" },
};

/** Is it a continuous measure. */
export function isContinuous(measure: string): boolean {
  return stratumOf(measure).measure in continuous;
}

/** Is it measured of canals, so that its units can be told apart by technique or by case. */
export function carriesStratum(measure: string): boolean {
  return continuous[measure]?.table === "canal_facts" || canalRates.includes(measure);
}

const canalRates = ["separation-per-use", "separation-per-canal"];

/** Where a continuous measure's value is kept; undefined for a rate. */
export function continuousValue(
  measure: string,
): { readonly table: string; readonly column: string } | undefined {
  return continuous[measure];
}

/**
 * A query giving the units of the measures, one row each: whose and when, the patient as its cluster, the visit, why it is left
 * out, and either its value or what it adds to the counts. With `strata`, what is measured of canals carries its stratum
 * (`stratumOf`); criteria do not, and need to know by what they are judged. `{place}` and `{whose}` as in `fill-in`.
 */
export function unitSql(
  measures: readonly string[],
  { strata, judging }: { readonly strata?: StratumKind; readonly judging?: Judging } = {},
): string {
  const tables = ["canal_facts", "visit_facts"].flatMap((table) => {
    const some = measures.filter((measure) => continuous[measure]?.table === table);
    const mark = table === "canal_facts" ? strata : undefined;
    return some.length === 0 ? [] : [continuousUnits(table, some, mark)];
  });
  const rates = measures.filter((measure) => !isContinuous(measure));
  return [...tables, ...rates.map((measure) => rateUnits(measure, strata, judging))].join(
    "\nunion all\n",
  );
}

function continuousUnits(table: string, measures: readonly string[], strata?: StratumKind): string {
  const marked = strata ? `m.measure || ${stratumMark(strata)} as measure` : "m.measure";
  const values = measures.map((measure) => `('${measure}', u.${continuous[measure]?.column})`);
  return `
    select u.practice, u.chair, u.clinician, u.worker, u.patient as cluster, u.visit_id, u.local_day, ${marked}, u.exclusion as excluded, null::text as excepted,
      1 as units, null::int as numerator, null::int as denominator,
      (u.exclusion is null and m.value is null)::int as missing, m.value, false as shared
    from ${table} u cross join lateral (values ${values.join(", ")}) m(measure, value) where {place} and {whose}`;
}

function rateUnits(measure: string, strata?: StratumKind, judging?: Judging): string {
  const mark = strata && carriesStratum(measure) ? ` || ${stratumMark(strata)}` : "";
  const id = criterionId(measure);
  if (id !== undefined) {
    if (!judging) throw new RangeError(`nothing to judge ${measure} by`);
    return rate(judging.parameters.bind(measure, "text"), `(${criterionUnits(id, judging)}) u`, {
      excluded: "u.excluded",
      excepted: "u.excepted",
      units: "u.weight",
      numerator: "u.met::int * u.weight",
      denominator: "(u.excluded is null and u.excepted is null)::int * u.weight",
      missing: "u.missing::int * u.weight",
      shared: "u.shared",
    });
  }
  if (measure === "separation-per-use") {
    return rate(
      `'${measure}'`,
      "(select * from canal_facts where {place} and {whose} and uses > 0) u",
      {
        mark,
        units: "u.uses",
        numerator: "u.separations",
        denominator: "u.uses - u.uses_unknown",
        missing: "u.uses_unknown",
      },
    );
  }
  const table = { "separation-per-canal": "canal_facts", "separation-per-visit": "visit_facts" }[
    measure
  ];
  if (!table) throw new RangeError(`no units are known for ${measure}`);
  return rate(
    `'${measure}'`,
    `(select *, separations > 0 as event, uses_unknown = 0 and uses_held = 0 as known
      from ${table} where {place} and {whose} and uses + uses_held > 0) u`,
    {
      mark,
      units: "1",
      numerator: "u.event::int",
      denominator: "(u.event or u.known)::int",
      missing: "(not u.event and not u.known)::int",
    },
  );
}

function rate(
  measure: string,
  from: string,
  sql: {
    /** What makes the measure's id carry the unit's stratum. */
    mark?: string;
    excluded?: string;
    excepted?: string;
    units: string;
    numerator: string;
    denominator: string;
    missing: string;
    shared?: string;
  },
): string {
  return `
    select u.practice, u.chair, u.clinician, u.worker, u.patient as cluster, u.visit_id, u.local_day, ${measure}${sql.mark ?? ""} as measure,
      ${sql.excluded ?? "null::text"} as excluded, ${sql.excepted ?? "null::text"} as excepted, ${sql.units} as units,
      ${sql.numerator} as numerator, ${sql.denominator} as denominator, ${sql.missing} as missing, null::float8 as value, ${sql.shared ?? "false"} as shared
    from ${from}`;
}
