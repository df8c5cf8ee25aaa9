import { type FiguresReach, narrowed, type OwnReach } from "@/lib/access/reach";
import type { Viewer } from "@/lib/access/viewer";
import type { Measured } from "@/lib/measures/measured";
import type { Period } from "@/lib/records/period";
import { type UnitState, unitList } from "@/lib/store/figures/unit-list";
import { keepExport } from "@/lib/store/quality/exports";
import { titleOf } from "@/lib/views/measure-words";
import type { PeriodChoices } from "@/lib/views/period-choices";
import { periodWords } from "@/lib/views/period-words";
import { pageWords, statesOf, type UnitLine, unitLine } from "@/lib/views/unit-lines";
import { unitsCsv } from "@/lib/views/units-csv";
import { type Address, AskedWrongly, askedFigures } from "./asked-period";
import { sha256 } from "./fingerprint";
import { keptUnits } from "./kept-units";
import { measuredAs } from "./measured-as";
import { ownPeriod } from "./own-period";
import { ownReasons } from "./own-reasons";
import { standingOfMeasure } from "./protocol/standing-of-measure";
import { readUnitsAsked } from "./units-asked";
import { unitsReach } from "./units-reach";

export type UnitsPage = {
  readonly title: string;
  readonly measure: string;
  readonly period: Period;
  readonly periods: PeriodChoices;
  readonly periodWords: string;
  readonly practices: readonly { readonly code: string; readonly name: string }[];
  readonly practice: string | undefined;
  readonly outcome: string | undefined;
  readonly outcomes: readonly { readonly name: string; readonly words: string }[];
  readonly lines: readonly UnitLine[];
  readonly words: string;
  readonly own: boolean;
  /** Clinicians are told apart. */
  readonly named: boolean;
  readonly page: number;
  readonly more: boolean;
  /** Of a criterion that was in force on no day of the period: that, and since when it is. */
  readonly notInForce: string | null;
};

const size = 50;
/** A file holds no more than this; beyond it a shorter period has to be chosen. */
const mostExported = 200_000;

/** The units of a measure or criterion within the viewer's reach, by outcome, a page of them. @throws Refused, AskedWrongly */
export async function unitsPage(
  viewer: Viewer,
  measure: string,
  address: Address,
): Promise<UnitsPage> {
  const { reach, measured, period, periods, practices, practice } = await asked(
    viewer,
    measure,
    address,
  );
  const { outcome, page } = readUnitsAsked(measured, address);
  const state = outcome as UnitState | undefined;
  const listed = { measure, period, state, limit: size, offset: (page - 1) * size };
  const { units, all } = await keptUnits(reach, listed);
  const own = "clinicianKey" in reach;
  const reasons = await ownReasons(reach);
  return {
    title: titleOf(measured),
    measure,
    period,
    periods,
    periodWords: periodWords(period),
    practices,
    practice,
    outcome,
    outcomes: statesOf(measured),
    lines: units.map((unit) => unitLine(measured, unit, own || reach.byClinician, reasons)),
    words: pageWords(page, size, all),
    own,
    named: !own && reach.byClinician,
    page,
    more: page * size < all,
    notInForce: all > 0 || own ? null : await whyNone(reach, measure, practice, practices, period),
  };
}

/** The same as a file, every unit; that it left is kept with who took it. @throws Refused, AskedWrongly */
export async function unitsExport(
  viewer: Viewer,
  measure: string,
  address: Address,
): Promise<{ readonly name: string; readonly text: string }> {
  const { reach, measured, period, practice } = await asked(viewer, measure, address);
  const { outcome } = readUnitsAsked(measured, address);
  const { units, all } = await unitList(reach, {
    measure,
    period,
    state: outcome as UnitState | undefined,
    limit: mostExported,
    offset: 0,
  });
  if (all > mostExported)
    throw new AskedWrongly("These are more units than one file holds: choose a shorter period.");
  const text = unitsCsv(measured, period, units);
  if ("practices" in reach)
    await keepExport(reach, {
      ...{ what: `units of ${measure}`, format: "csv" },
      ...{ period: period.name, sha256: sha256(text) },
    });
  return {
    name: fileName(["units", measure, practice, period.name.replace("..", "-to-")]),
    text,
  };
}

async function whyNone(
  reach: FiguresReach | OwnReach,
  measure: string,
  practice: string | undefined,
  practices: UnitsPage["practices"],
  period: Period,
): Promise<string | null> {
  const codes = practice ? [practice] : practices.map(({ code }) => code);
  return "practices" in reach
    ? ((await standingOfMeasure(reach, measure, codes, period))?.notInForce ?? null)
    : null;
}

/** What is no letter or digit in a practice's code could break the file's name. */
function fileName(parts: readonly (string | undefined)[]): string {
  const words = parts.flatMap((part) => part ?? []);
  return `${words.map((word) => word.replace(/[^A-Za-z0-9]+/g, "-")).join("-")}.csv`;
}

async function asked(
  viewer: Viewer,
  measure: string,
  address: Address,
): Promise<{
  reach: FiguresReach | OwnReach;
  measured: Measured;
  period: Period;
  periods: PeriodChoices;
  practices: readonly { code: string; name: string }[];
  practice: string | undefined;
}> {
  const reach = unitsReach(viewer);
  const measured = await measuredAs(reach, measure);
  if (!measured || measure === "separation-per-instrument")
    throw new AskedWrongly("There is no list of such units.");
  if (!("clinicianKey" in reach)) {
    const { period, periods, practices, practice } = await askedFigures(reach, address);
    return { reach: narrowed(reach, practice), measured, period, periods, practices, practice };
  }
  const { period, periods } = await ownPeriod(reach, address);
  return { reach, measured, period, periods, practices: [], practice: undefined };
}
