import { holderReach } from "@/lib/access/reach";
import { type Period, quarterOf, shifted } from "@/lib/records/period";
import { dataState } from "@/lib/store/quality/data-state";
import { withFolder } from "./folder-home";
import { flagRow, type QuarterFlag, separationFlags } from "./separation-flags";
import { falseAlarmWords, separationSignals, signalRow } from "./separation-signals";

/**
 * Separations in a folder of records: who is flagged in which quarter, and after how many canals the running sum signals.
 * @param code of the clinician who truly differs, whose flags are told apart from all others
 */
export async function elevated(folder?: string, code?: string): Promise<void> {
  if (!folder) throw new Error("name the folder of records");
  await withFolder(folder, "Europe/London", async () => {
    const quarters = await quartersOfRecords();
    const flags = await separationFlags(quarters);
    if (code && !flags.some((one) => one.code === code))
      throw new Error(`no clinician ${code} in these records`);
    const raised = flags.filter(isRaised);
    console.log("\nFlagged, or of the clinician named, quarter by quarter");
    console.table(flags.filter((one) => isRaised(one) || one.code === code).map(flagRow));
    console.log("\nFlags over all quarters");
    console.table(flagCounts(flags, raised, code));
    await tellSignals(flags, quarters);
  });
}

/** The running sum as it would have been followed from the start, and with a baseline twice as long. */
async function tellSignals(flags: readonly QuarterFlag[], quarters: readonly Period[]) {
  const people = new Map(
    flags.flatMap(({ code, flagged: { figure } }) =>
      figure.about.kind === "clinician" ? [[figure.about.key, code] as const] : [],
    ),
  );
  const everyone = [...people]
    .map(([key, code]) => ({ key, code }))
    .sort((one, other) => one.code.localeCompare(other.code));
  for (const length of [1, 2]) {
    const last = quarters[length - 1];
    if (!last || quarters.length <= length) continue;
    const baseline = spanOf(quarters.slice(0, length));
    const span = spanOf(quarters.slice(length));
    const found = await separationSignals(everyone, baseline, span);
    const there = found.filter((one) => one !== null);
    const [any] = there;
    console.log(
      `\nRunning sum over ${span.name} against everyone's ${baseline.name} (${any?.baseline.events} separations in ${any?.baseline.canals} canals; expected ${any?.byCase ? "by case" : "at everyone's rate"}), ${falseAlarmWords}`,
    );
    console.table(there.map(signalRow));
    const chance = there.reduce((sum, one) => sum + one.chance, 0);
    console.log(
      `False alarms expected of all together were nobody different: ${chance.toFixed(2)}`,
    );
  }
}

function flagCounts(
  flags: readonly QuarterFlag[],
  raised: readonly QuarterFlag[],
  code: string | undefined,
) {
  return [...new Set(flags.map((one) => one.measure))].map((measure) => {
    const here = raised.filter((one) => one.measure === measure);
    const own = here.filter((one) => one.code === code && one.flagged.flag.direction === "higher");
    const others = here.filter((one) => one.code !== code);
    return {
      measure,
      figures: flags.filter((one) => one.measure === measure).length,
      [code ? `${code} first` : "named first"]: own[0]?.quarter ?? "never",
      "quarters look": own.length,
      "look first": own.filter(isFirst).length,
      "others look": others.length,
      "others look first": others.filter(isFirst).length,
    };
  });
}

async function quartersOfRecords(): Promise<Period[]> {
  const { firstDay, lastDay } = await dataState(holderReach().figures);
  if (!firstDay || !lastDay) throw new Error("the folder holds no visits");
  const quarters: Period[] = [];
  for (let one = quarterOf(firstDay); one.from <= lastDay; one = shifted(one, 1))
    quarters.push(one);
  return quarters;
}

function spanOf(quarters: readonly Period[]): Period {
  const first = quarters[0] as Period;
  const last = quarters.at(-1) as Period;
  const name = first === last ? first.name : `${first.name} to ${last.name}`;
  return { name, from: first.from, until: last.until };
}

function isRaised(one: QuarterFlag): boolean {
  return one.flagged.flag.tier !== null;
}

function isFirst(one: QuarterFlag): boolean {
  return one.flagged.flag.tier === "look-first";
}
