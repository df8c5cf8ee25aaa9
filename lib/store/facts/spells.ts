/**
 * SQL that makes the temporary table `spells`: who a practice's code is, in spans of days that do not overlap. Where people's own
 * spells do, the one that began last counts. Made once, so that facts join it instead of looking it up for each row.
 */
export const makeSpells = `
create temp table spells on commit drop as
select practice, code, day as since, lead(day) over (partition by practice, code order by day) as until, person from (
  select distinct on (b.practice, b.code, b.day) b.practice, b.code, b.day, p.person
  from (
    select practice, code, "from" as day from people
    union select practice, code, "to" + 1 from people where "to" is not null
  ) b
  left join people p on p.practice = b.practice and p.code = b.code and b.day >= p."from" and (p."to" is null or b.day <= p."to")
  order by b.practice, b.code, b.day, p."from" desc, p.person
) turns`;

/** SQL: joins to a visit `v` the spell `w` in which a code is somebody on that day; at most one. */
export function spellThen(code: string): string {
  return `left join spells w on w.practice = v.practice and w.code = ${code} and v.local_day >= w.since and (w.until is null or v.local_day < w.until)`;
}

/** SQL: the key of whoever a code is on that day, by its spell `w`: the person where it is known, else practice and code. */
export function worker(code: string): string {
  return `coalesce('person:' || w.person, v.practice || '/' || ${code})`;
}
