import type { Stratum, StratumKind } from "@/lib/measures/tally";

/** A measure's id and its stratum, as the units of strata carry them in one: volume@technique/rotary/syringe. */
export function stratumOf(marked: string): {
  readonly measure: string;
  readonly stratum?: Stratum;
} {
  const [measure = "", parts] = marked.split("@");
  if (parts === undefined) return { measure };
  const [by, ...told] = parts.split("/");
  const [one = null, other = null, third = null] = told.map((part) => part || null);
  return by === "technique"
    ? { measure, stratum: { by, preparation: one, delivery: other } }
    : { measure, stratum: { by: "case", tooth: one, curvature: other, treatment: third } };
}

/** SQL: what is added to a measure's id so that it carries the stratum of a row `u` of canal_facts. */
export function stratumMark(kind: StratumKind): string {
  return marks[kind];
}

// The groups of teeth as lib/records/tooth has them. Classes of curvature after Schneider 1971 (Oral Surg 32:271; from
// memory), whose moderate is 10 to 20 and severe from 25 degrees; what lies between is put with moderate.
const tooth = `case when right(u.tooth, 1) <= '3' then 'front' when u.tooth >= '51' or right(u.tooth, 1) >= '6' then 'molar' else 'premolar' end`;
const curvature = `case when u.curvature_deg < 10 then 'slight' when u.curvature_deg < 25 then 'moderate' when u.curvature_deg >= 25 then 'severe' else '' end`;
const treatment = `case when u.treatment in ('primary', 'retreatment') then u.treatment else 'other' end`;

/** SQL: the case of a row `u` of canal_facts in one: front/slight/primary. */
export function caseMark(): string {
  return `${tooth} || '/' || ${curvature} || '/' || ${treatment}`;
}

const marks: Record<StratumKind, string> = {
  technique: "'@technique/' || coalesce(u.preparation, '') || '/' || coalesce(u.delivery, '')",
  case: `'@case/' || ${caseMark()}`,
};
