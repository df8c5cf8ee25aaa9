// What is derived of a delivery `i` and of whether the timer was started afresh for its canal, a column given by name.

/** SQL: the time it flowed; read off a timer that was not started afresh it may hold earlier canals and is not recorded. */
export function flowSeconds(timerReset: string): string {
  return unlessRunOn(timerReset, "coalesce(i.duration_s, i.volume_ml / i.flow_ml_min * 60)");
}

/** SQL: its volume; none is derived from a timer that was not started afresh. */
export function volume(timerReset: string): string {
  return `coalesce(i.volume_ml, ${unlessRunOn(timerReset, "i.flow_ml_min * i.duration_s / 60")})`;
}

/** SQL: its flow; none is derived from a timer that was not started afresh. */
export function flow(timerReset: string): string {
  return `coalesce(i.flow_ml_min, ${unlessRunOn(timerReset, "i.volume_ml / nullif(i.duration_s, 0) * 60")})`;
}

/** SQL: the time it was activated. */
export const activationSeconds =
  "case when i.activation = 'none' then 0 when i.activation is not null then i.activation_s end";

function unlessRunOn(timerReset: string, value: string): string {
  return `case when i.basis = 'timer' and ${timerReset} = 'no' then null else ${value} end`;
}
