/** SQL: true where some q is, null where one could be, else false. */
export function someOf(qs: string): string {
  return `(select case when bool_or(o.q) then true when bool_or(o.q is null) then null else false end from (${qs}) o)`;
}

/** SQL: false where some q is, null where one could be, else true. */
export function everyOf(qs: string): string {
  return `(select case when bool_or(not o.q) then false when bool_or(o.q is null) then null else true end from (${qs}) o)`;
}

/** SQL: the same over items that are gathered. */
export function gatheredSome(q: string, gathered: (aggregate: string) => string): string {
  return `(case when ${gathered(`bool_or(${q})`)} then true when ${gathered(`bool_or((${q}) is null)`)} then null else false end)`;
}

/** SQL: the same over items that are gathered. */
export function gatheredEvery(q: string, gathered: (aggregate: string) => string): string {
  return `(case when ${gathered(`bool_or(not (${q}))`)} then false when ${gathered(`bool_or((${q}) is null)`)} then null else true end)`;
}
