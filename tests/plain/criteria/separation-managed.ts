import type { Values } from "@/lib/records/column";
import type { Records } from "../records";
import { type Unit, unitOf } from "../unit";
import { type Visit, visitsOf } from "../visit";
import { judged } from "./judged";
import { all, atMost, type Truth } from "./kleene";

/** Days that a separation may stay pending. */
const mostDays = 90;

/** Separations, by whether all is written down, the patient was told and nothing stayed pending; every visit counts. */
export function separationManaged(records: Records): Unit[] {
  const visits = visitsOf(records);
  return visits.flatMap((visit) =>
    visit.canals.flatMap((canal) =>
      canal.uses
        .filter((use) => Number(use.separated ?? 0) > 0)
        .flatMap((use) => {
          const later = followUpsOf(visit, use);
          const state = judged({
            member: true,
            met: all([
              use.third === undefined ? undefined : true,
              use.fragment_mm === undefined ? undefined : true,
              managementOf(use, later) === undefined ? undefined : true,
              told(use, later),
              atMost(openDays(visit, use, later, lastDay(visits, visit.practice)), mostDays),
            ]),
          });
          const weight = Number(use.separated);
          return state ? [{ ...unitOf(records, visit, canal, state, use), weight }] : [];
        }),
    ),
  );
}

/** The follow-ups of the use, by day. */
function followUpsOf({ followups }: Visit, use: Values): Values[] {
  return followups
    .filter((row) => row.canal === use.canal && row.seq === use.seq)
    .sort((one, other) => (String(one.day) < String(other.day) ? -1 : 1));
}

function managementOf(use: Values, later: readonly Values[]): unknown {
  return later.findLast((row) => row.management !== undefined)?.management ?? use.management;
}

/** Once told is told. */
function told(use: Values, later: readonly Values[]): Truth {
  const said = [use, ...later].map((row) => row.patient_told);
  if (said.includes(true)) return true;
  return said.includes(false) ? false : undefined;
}

/** Days until it was settled, or until the practice's last visit where it still is pending. */
function openDays(
  visit: Visit,
  use: Values,
  later: readonly Values[],
  last: string,
): number | undefined {
  const settles = ({ management }: Values) => management !== undefined && management !== "pending";
  if (settles(use)) return 0;
  const settled = later.find(settles);
  if (settled) return daysFrom(visit.day, String(settled.day));
  return managementOf(use, later) === "pending" ? daysFrom(visit.day, last) : undefined;
}

function lastDay(visits: readonly Visit[], practice: string): string {
  const days = visits.filter((one) => one.practice === practice).map(({ day }) => day);
  return days.sort().at(-1) ?? "";
}

function daysFrom(first: string, last: string): number {
  return (Date.parse(last) - Date.parse(first)) / 86_400_000;
}
