import type { Subject, SubjectKind } from "@/lib/measures/tally";
import { grouped } from "./grouped";
import type { Clinician, Unit } from "./unit";

/** The units by whom or what they are about; a person's units at two practices are together. */
export function bySubject<U extends Unit>(
  units: readonly U[],
  kind: SubjectKind,
): { subject: Subject; units: U[] }[] {
  const belonging = units.flatMap((unit) => keysOf(unit, kind).map((key) => ({ key, unit })));
  const groups = grouped(belonging, ({ key }) => key);
  return [...groups].map(([key, pairs]) => {
    const some = pairs.map(({ unit }) => unit);
    return { subject: subjectOf(kind, key, some), units: some };
  });
}

/** A unit is of one practice and chair, but may be of several clinicians. */
function keysOf(unit: Unit, kind: SubjectKind): string[] {
  if (kind === "group") return [""];
  if (kind === "practice") return [unit.practice];
  if (kind === "chair") return [JSON.stringify([unit.practice, unit.chair])];
  return [...new Set(cliniciansOf(unit).map(({ key }) => key))];
}

function cliniciansOf({ clinician, also = [] }: Unit): Clinician[] {
  return clinician ? [clinician, ...also] : [];
}

function subjectOf(kind: SubjectKind, key: string, units: readonly Unit[]): Subject {
  const distinct = (of: (unit: Unit) => string | string[]) =>
    [...new Set(units.flatMap(of))].sort();
  const practices = distinct((unit) => unit.practice);
  const practice = practices.length === 1 ? practices[0] : undefined;
  if (kind === "group") return { kind };
  if (kind === "practice") return { kind, code: key };
  if (kind === "chair")
    return { kind, code: distinct((unit) => unit.chair).join(), practice: practice ?? "" };
  // Every code that the person worked under in the period, and the practice where it is but one.
  const codes = distinct((unit) =>
    cliniciansOf(unit)
      .filter((one) => one.key === key)
      .map(({ code }) => code),
  );
  return { kind, code: codes.join(", "), practice, key };
}
