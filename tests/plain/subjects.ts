import type { Subject, SubjectKind } from "@/lib/measures/tally";
import { grouped } from "./grouped";
import type { Unit } from "./unit";

/** The units by whom or what they are about; a person's units at two practices are together. */
export function bySubject<U extends Unit>(
  units: readonly U[],
  kind: SubjectKind,
): { subject: Subject; units: U[] }[] {
  const belonging = units.filter((unit) => keyOf(unit, kind) !== undefined);
  const groups = grouped(belonging, (unit) => keyOf(unit, kind) ?? "");
  return [...groups].map(([key, some]) => ({ subject: subjectOf(kind, key, some), units: some }));
}

function keyOf(unit: Unit, kind: SubjectKind): string | undefined {
  if (kind === "group") return "";
  if (kind === "practice") return unit.practice;
  if (kind === "chair") return JSON.stringify([unit.practice, unit.chair]);
  return unit.clinician?.key;
}

function subjectOf(kind: SubjectKind, key: string, units: readonly Unit[]): Subject {
  const distinct = (of: (unit: Unit) => string) => [...new Set(units.map(of))].sort();
  const practices = distinct((unit) => unit.practice);
  const practice = practices.length === 1 ? practices[0] : undefined;
  if (kind === "group") return { kind };
  if (kind === "practice") return { kind, code: key };
  if (kind === "chair")
    return { kind, code: distinct((unit) => unit.chair).join(), practice: practice ?? "" };
  // Every code that the person worked under in the period, and the practice where it is but one.
  return { kind, code: distinct((unit) => unit.clinician?.code ?? "").join(", "), practice, key };
}
