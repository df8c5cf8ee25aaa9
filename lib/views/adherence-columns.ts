/** The columns of the records, in order. Rates, intervals, bounds and targets are fractions, not percentages. */
export const adherenceColumns = [
  "row",
  "criterion",
  "title",
  "about",
  "practice",
  "chair",
  "period",
  "from",
  "to",
  "definition",
  "population_in_words",
  "unit",
  "population",
  "left_out",
  "left_out_by_reason",
  "eligible",
  "excepted",
  "excepted_by_reason",
  "met",
  "not_met",
  "not_recorded",
  "counted",
  "rate",
  "interval_lower",
  "interval_upper",
  "interval_level",
  "interval_method",
  "rate_if_unrecorded_not_met",
  "rate_if_unrecorded_met",
  "target",
  "target_set_by",
  "in_these_records",
  "beyond_chance",
  "why_no_rate",
  "says",
  "clustered_lower",
  "clustered_upper",
  "clustered_method",
  "design_effect",
  "interval_to_read",
  "change",
] as const;
/** Cells of one record by column; what is absent has no value. */
export type AdherenceCells = Partial<
  Record<(typeof adherenceColumns)[number], string | number | null>
>;

/** Every cell of an overall score that could tell something of it, as masked. */
export const maskedScoreCells = masked(
  "met",
  "not_met",
  "not_recorded",
  "counted",
  "rate",
  "interval_lower",
  "interval_upper",
);
/** The same of a criterion's line. */
export const maskedCells: AdherenceCells = {
  ...maskedScoreCells,
  ...masked(
    "population",
    "left_out",
    "left_out_by_reason",
    "eligible",
    "excepted",
    "excepted_by_reason",
  ),
  ...masked(
    "rate_if_unrecorded_not_met",
    "rate_if_unrecorded_met",
    "in_these_records",
    "beyond_chance",
  ),
  ...masked("clustered_lower", "clustered_upper", "design_effect", "interval_to_read", "change"),
};

function masked(...columns: (keyof AdherenceCells)[]): AdherenceCells {
  return Object.fromEntries(columns.map((column) => [column, "masked"]));
}
