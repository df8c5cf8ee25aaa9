/** What is measured, in words and in kind. The values themselves are computed in PostgreSQL. */
export type Measure = {
  readonly id: string;
  readonly family: 1 | 2 | 3;
  readonly title: string;
  readonly kind: "median" | "rate";
  /** UCUM unit of a continuous measure; what is counted for a proportion. */
  readonly unit: string;
  readonly per: "canal" | "visit" | "use" | "instrument";
  /** What the figure is, exactly. */
  readonly definition: string;
  readonly population: string;
  readonly why: string;
  readonly source: string;
  readonly lowerIsBetter?: boolean;
};
