/** Where units are read from, beside what `gathered-sql` gathers. */
export type Tables = {
  readonly canalFacts: string;
  readonly visitFacts: string;
  readonly steps: string;
  readonly irrigation: string;
  readonly instruments: string;
  readonly canals: string;
  readonly sessions: string;
  /** SQL: the join of the canal `c` to its facts `u`. */
  readonly canal: string;
  /** SQL: the join of the visit `v` to the facts `u` of it or of its canal. */
  readonly visit: string;
};

/** The records themselves. */
export const records: Tables = {
  canalFacts: "canal_facts",
  visitFacts: "visit_facts",
  steps: "steps",
  irrigation: "irrigation",
  instruments: "instruments",
  canals: "canals",
  sessions: "sessions",
  canal: "join canals c on c.visit_id = u.visit_id and c.canal = u.canal",
  visit: "join sessions v on v.id = u.visit_id",
};
