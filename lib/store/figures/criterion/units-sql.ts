import type { Condition } from "@/lib/protocol/condition";
import type { Criterion } from "@/lib/protocol/criterion";
import type { JudgedUnit } from "@/lib/protocol/judged-unit";
import { listsIn } from "@/lib/protocol/looked-at";
import { countsOverall } from "@/lib/protocol/overall";
import { criteriaOf, type Protocol, type Span, spansOf } from "@/lib/protocol/protocol";
import { conditionSql } from "./condition-sql";
import { evidenceSql } from "./evidence-sql";
import { Gathering } from "./gathering";
import type { Parameters } from "./parameters";
import { exceptionSql, sourceOf, workersOf } from "./source-sql";
import type { Tables } from "./tables";

/** What units are judged by, and where the values of the query go. */
export type Judging = {
  readonly protocol: Protocol;
  readonly parameters: Parameters;
  /** What the other criteria lack, where that is known; else a criterion that asks for it has it found out by its query. */
  readonly lacking?: Lacking | undefined;
  /** Copies of what is asked for, in the transaction; else the records themselves are read. */
  readonly copies?: Tables | undefined;
};

/** Visits, and beside each what one criterion lacks there, in the order of the criteria; both as PostgreSQL writes arrays. */
export type Lacking = { readonly visits: string; readonly criteria: string };

/** The fields and lists that a criterion looks at. */
export type Evidence = Pick<JudgedUnit, "fields" | "lists">;

export type Wanted = {
  /** Also the JSON of what the criterion looks at, as `evidence`. */
  readonly evidence?: boolean;
  /** Only what overall scores count: of visits and their records' content, and from the days on which a version counts. */
  readonly scored?: boolean;
};

/**
 * A query giving each unit of a criterion, judged by the version in force on its day in its practice: whose and when it
 * is, how many units it stands for, `excluded` and `excepted` with their reasons, `met`, and `missing` for not recorded.
 * A unit that counts also for another clinician has a further row, `shared`, that is theirs alone. `{place}` stands for
 * the condition on practice and day, `{whose}` for that on the clinician. The order of reasons is lib/protocol/outcome's.
 */
export function criterionUnits(id: string, judging: Judging, wanted: Wanted = {}): string {
  const branches = spansOf(judging.protocol, id)
    .filter(({ criterion }) => !wanted.scored || countsOverall(criterion))
    .map((span) => spanUnits(span, judging, wanted));
  return branches.length > 0 ? branches.join("\nunion all\n") : nothing(wanted);
}

/** The same of one definition, whatever is in force. */
export function definedUnits(criterion: Criterion, judging: Judging, wanted: Wanted = {}): string {
  const always = { from: null, until: null, scoredFrom: null, practices: { allBut: [] } } as const;
  return spanUnits({ criterion, ...always }, judging, wanted);
}

function spanUnits(span: Span, judging: Judging, wanted: Wanted): string {
  const { criterion } = span;
  const { parameters } = judging;
  const gathering = new Gathering(criterion.unit, parameters, judging.copies);
  const sql = (condition: Condition) => conditionSql(condition, gathering);
  const { facts, from, columns, exclusion } = sourceOf(criterion, gathering.tables);
  const outside = criterion.treatmentPopulation
    ? [`when ${exclusion} is not null then ${exclusion}`]
    : [];
  const left = criterion.exclusions.map(({ reason, when }, place) => ({
    name: `x.x${place}`,
    column: `${sql(when)} as x${place}`,
    when: `when x.x${place} then ${parameters.bind(reason, "text")}`,
  }));
  const reasons = [...outside, ...left.map(({ when }) => when)].join(" ");
  const settled = ["m.member", ...left.map(({ name }) => `${name} is not null`)].join(" and ");
  const [member, met] = [sql(criterion.population), sql(criterion.met)];
  const reason = exceptionSql(criterion, gathering);
  const evidence = wanted.evidence ? `, ${evidenceSql(criterion, gathering)} as evidence` : "";
  const who = workersOf(criterion, gathering);
  const withs = gathering.withs(facts ?? "");
  // offset 0 keeps PostgreSQL from putting a condition wherever its answer is used, to be worked out each time.
  const units = `
    select q.* from (
      select b.practice, b.chair, w.clinician, w.worker, b.patient, b.local_day, b.visit_id, b.canal, b.seq, b.weight, w.shared, b.excluded,
        b.reason as excepted,
        b.met,
        (b.excluded is null and not b.met and not b.missed and b.reason is null) as missing,
        ${criterion.completenessFloor === null} as floorless${wanted.evidence ? ", b.evidence, b.reason as exception, b.outside" : ""}
      from (
        select ${columns}, d.excluded, y.met is true as met, y.met is false as missed, z.reason, ${exclusion} as outside${evidence}${who.columns}
        from ${withs.length > 0 ? from.replace(facts ?? "", "asked u") : from}
        ${gathering.joins()}
        cross join lateral (select ${member} as member offset 0) m
        cross join lateral (select ${left.map(({ column }) => column).join(", ") || "true as none"} offset 0) x
        cross join lateral (select ${reasons ? `case ${reasons} end` : "null::text"} as excluded, (${settled}) is true as settled) d
        cross join lateral (select case when d.excluded is null and d.settled then ${met} end as met offset 0) y
        cross join lateral (select case when d.excluded is null and y.met is not true then ${reason} end as reason offset 0) z
        where m.member is not false
      ) b cross join lateral (${who.workers}) w
    ) q where {whose}`;
  const looksAtGaps = listsIn(criterion.met).includes("gaps");
  const all = [
    ...(looksAtGaps ? [`gaps as materialized (${gaps(judging)})`] : []),
    ...withs.map((one) => within(one, span, judging, wanted)),
  ];
  const judged = within(units, span, judging, wanted);
  return all.length > 0 ? `(with ${all.join(", ")} ${judged})` : judged;
}

/** Where and when a definition is in force, as part of the condition on practice and day. */
function within(sql: string, span: Span, { parameters }: Judging, wanted: Wanted): string {
  const since = wanted.scored ? span.scoredFrom : span.from;
  const parts = [
    "{place}",
    ...("only" in span.practices
      ? [`practice = ${parameters.bind(span.practices.only, "text")}`]
      : span.practices.allBut.length > 0
        ? [`practice <> all(${parameters.bind([...span.practices.allBut], "text[]")})`]
        : []),
    ...(since === null ? [] : [`local_day >= ${parameters.bind(since, "date")}`]),
    ...(span.until === null ? [] : [`local_day < ${parameters.bind(span.until, "date")}`]),
  ];
  return sql.replaceAll("{place}", parts.join(" and "));
}

/** What the other criteria lack, at which visit. */
function gaps(judging: Judging): string {
  const { lacking, parameters } = judging;
  return lacking
    ? `select g.* from unnest(${parameters.bind(lacking.visits, "bigint[]")}, ${parameters.bind(lacking.criteria, "text[]")}) g(visit_id, criterion)`
    : lackingSql(judging);
}

/** A query giving what each other criterion lacks at each visit asked for, whoever else worked there, and the criterion's place. */
export function lackingSql(judging: Judging): string {
  const parts = criteriaOf(judging.protocol).map(
    (
      { id },
      place,
    ) => `select visit_id, ${place} as place, ${judging.parameters.bind(id, "text")} as criterion
      from (${criterionUnits(id, judging, { scored: true })}) g
      where not shared and excluded is null and excepted is null and (missing or (floorless and not met))`,
  );
  const all = parts.join("\nunion all\n").replaceAll("{whose}", "true");
  return all.replaceAll("{place}", "{place} and {visited}");
}

function nothing(wanted: Wanted): string {
  const evidence = wanted.evidence
    ? ", null::jsonb as evidence, null::text as exception, null::text as outside"
    : "";
  return `select practice, chair, clinician, worker, patient, local_day, visit_id, '' as canal, null::int as seq, 1 as weight, false as shared,
    null::text as excluded, null::text as excepted, false as met, false as missing, false as floorless${evidence} from visit_facts where false`;
}
