import { holderReach } from "@/lib/access/reach";
import { criterionMeasure } from "@/lib/protocol/criterion";
import { defaults } from "@/lib/protocol/defaults/defaults";
import { period as periodNamed } from "@/lib/records/period";
import { figures } from "@/lib/reports/figures";
import { pool } from "@/lib/store/database";
import { fillIn } from "@/lib/store/figures/criterion/fill-in";
import { Parameters } from "@/lib/store/figures/criterion/parameters";
import { definedUnits } from "@/lib/store/figures/criterion/units-sql";
import { protocolWithin } from "@/lib/store/protocol/versions";
import { withFolder } from "./statistics/folder-home";

/** Every criterion, by everyone, in one quarter of a folder of records: the time of the figures, and the slowest query's plan. */
export async function criteria(
  folder = "",
  name = "2026-Q2",
  zone = "Europe/London",
): Promise<void> {
  const period = periodNamed(name);
  if (!folder || !period)
    throw new Error("Give the folder of the records, and a period: criteria FOLDER 2026-Q2");
  await withFolder(folder, zone, async () => {
    const reach = holderReach().figures;
    const by = ["group", "practice", "clinician", "chair"] as const;
    const measures = defaults.map(criterionMeasure);
    const start = performance.now();
    const all = await figures(reach, { measures, periods: [period], by });
    console.log(`${all.length} figures of the criteria in force together: ${since(start)} ms\n`);
    const protocol = await protocolWithin(reach);
    const plans: { id: string; ms: number; plan: string }[] = [];
    console.log("criterion                                  units      ms");
    for (const criterion of defaults) {
      const parameters = new Parameters([period.from, period.until]);
      const units = fillIn(definedUnits(criterion, { protocol, parameters }), {
        place: "local_day >= $1::date and local_day < $2::date",
        whose: "true",
      });
      const begun = performance.now();
      const { rows } = await pool().query(
        `select count(*)::int as units from (${units}) u`,
        parameters.values,
      );
      const ms = since(begun);
      const explained = await pool().query(
        `explain (analyze, buffers) ${units}`,
        parameters.values,
      );
      const plan = explained.rows.map((row) => row["QUERY PLAN"]).join("\n");
      plans.push({ id: criterion.id, ms, plan });
      console.log(
        `${criterion.id.padEnd(40)} ${String(rows[0].units).padStart(7)} ${String(ms).padStart(7)}`,
      );
    }
    const [slowest] = plans.sort((one, other) => other.ms - one.ms);
    console.log(`\nThe plan of ${slowest?.id}:\n${slowest?.plan}`);
  });
}

function since(start: number): number {
  return Math.round(performance.now() - start);
}
