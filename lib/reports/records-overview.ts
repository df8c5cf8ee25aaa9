import { recordsReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import { heldNow, recentImports } from "@/lib/store/import/imports";
import { missingWords } from "@/lib/views/coverage-calendar";
import { type HeldGroup, heldGroups } from "@/lib/views/held-lines";
import { type ImportLine, importLine } from "@/lib/views/import-lines";
import { count } from "@/lib/views/quantity";
import { type Address, type Asked, askedPeriod } from "./asked-period";
import { differencesWaiting } from "./corrections";
import { coverageOf } from "./coverage";

export type RecordsOverview = Pick<Asked, "period" | "periods" | "practices" | "practice"> & {
  readonly imports: readonly ImportLine[];
  readonly held: readonly HeldGroup[];
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

/** The record keeper's page: no figures. @throws Refused, AskedWrongly */
export async function recordsOverview(viewer: Viewer, address: Address): Promise<RecordsOverview> {
  const reach = recordsReach(viewer);
  const asked = await askedPeriod(reach, address);
  const { period, periods, practices, practice } = asked;
  const [imports, held, chairs, differences] = await Promise.all([
    recentImports(reach, importsListed),
    heldNow(reach, { limit: 0, offset: 0 }),
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
    held: heldGroups(held.byReason, "held"),
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
