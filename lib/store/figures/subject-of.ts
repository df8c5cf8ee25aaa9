import type { Subject, SubjectKind } from "@/lib/measures/tally";

/** What tells of a subject in a row of counts; code and practice are null where there are several or none. */
export type SubjectRow = {
  readonly kind: SubjectKind;
  readonly key: string;
  readonly practice: string | null;
  /** Of a clinician every code, as "C01, C07". */
  readonly code: string | null;
};

/** SQL: the practice and code of a group of rows of `Scope`'s subjects, as `SubjectRow` has them. */
export const subjectColumns = `case when min(practice) = max(practice) then min(practice) end as practice,
  case kind when 'clinician' then string_agg(distinct clinician, ', ' order by clinician) when 'chair' then min(chair)
    when 'practice' then min(practice) end as code`;

/** Whom or what the rows of one subject are about. */
export function subjectOf(rows: readonly SubjectRow[]): Subject {
  const [first] = rows;
  if (!first || first.kind === "group") return { kind: "group" };
  const practices = new Set(rows.map((row) => row.practice));
  const practice = practices.size === 1 ? (first.practice ?? undefined) : undefined;
  const codes = new Set(rows.flatMap((row) => row.code?.split(", ") ?? []));
  const code = [...codes].sort().join(", ");
  if (first.kind === "practice") return { kind: "practice", code };
  if (first.kind === "chair") return { kind: "chair", code, practice: practice ?? "" };
  return { kind: "clinician", code, practice, key: first.key };
}
