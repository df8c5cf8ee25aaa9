/** The tables that units are read from, beside those of `gathered-sql`. */
export type Tables = {
  readonly canalFacts: string;
  readonly visitFacts: string;
  readonly canals: string;
  readonly sessions: string;
  readonly steps: string;
  readonly irrigation: string;
  readonly instruments: string;
};

/** The records themselves. */
export const records: Tables = {
  canalFacts: "canal_facts",
  visitFacts: "visit_facts",
  canals: "canals",
  sessions: "sessions",
  steps: "steps",
  irrigation: "irrigation",
  instruments: "instruments",
};
