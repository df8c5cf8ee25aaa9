import { recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { recentImports } from "@/lib/store/import/imports";
import { benchRows } from "@/lib/store/mend/bench-rows";
import { heldGroupsNow } from "@/lib/store/mend/held-groups";
import { type BenchGroup, benchGroups } from "@/lib/views/bench-groups";
import { missingWords } from "@/lib/views/coverage-calendar";
import { type ImportLine, importLine } from "@/lib/views/import-lines";
import { count } from "@/lib/views/quantity";
import { type Address, type Asked, askedPeriod } from "./asked-period";
import { differencesWaiting } from "./corrections";
import { coverageOf } from "./coverage";

export type RecordsOverview = Pick<Asked, "period" | "periods" | "practices" | "practice"> & {
  readonly imports: readonly ImportLine[];
  /** What most rows are held for. */
  readonly held: readonly BenchGroup[];
  readonly heldRows: string;
  /** What is missing in the period, in one sentence, and the period in words. */
  readonly coverage: string;
  /** Newer versions of accepted rows that wait for an answer; empty where there is none. */
  readonly differences: string;
  /** Time zones to choose from, and the one that is likely. */
  readonly zones: readonly string[];
  readonly zone: string;
};

/** How many imports the page lists. */
const importsListed = 25;

/** How many reasons the page lists; the bench lists all. */
const reasonsListed = 8;

/** The record keeper's page: no figures. @throws Refused, AskedWrongly */
export async function recordsOverview(viewer: Viewer, address: Address): Promise<RecordsOverview> {
  const reach = recordsReach(viewer);
  const asked = await askedPeriod(reach, address);
  const { period, periods, practices, practice } = asked;
  const [imports, held, groups, chairs, differences] = await Promise.all([
    recentImports(reach, importsListed),
    benchRows(reach, { state: "held", limit: 0, offset: 0 }),
    heldGroupsNow(reach, { state: "held", limit: reasonsListed, offset: 0 }),
    coverageOf(reach, period, practice),
    differencesWaiting(reach),
  ]);
  const zone = practices[0]?.zone ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
  return {
    period,
    periods,
    practices,
    practice,
    imports: imports.map((one) => importLine(one, zone)),
    held: benchGroups(groups.groups, undefined),
    heldRows: count(held.count),
    coverage: missingWords(chairs),
    differences:
      differences === 0
        ? ""
        : `${count(differences)} newer ${differences === 1 ? "version" : "versions"} of accepted rows`,
    zones: [...new Set([zone, "UTC", ...Intl.supportedValuesOf("timeZone")])].sort(),
    zone,
  };
}
