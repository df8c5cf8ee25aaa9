/** An interval as a line with ticks at its ends, lying along the drawing or standing upright in it. */
export function Whisker(props: {
  ends: readonly [number, number];
  /** Where the line lies across its own direction. */
  at: number;
  /** How far a tick stands out on each side; 0 for none. */
  tick: number;
  strokeWidth: number;
  upright?: boolean;
}) {
  const { at, tick, strokeWidth, upright } = props;
  const [along, across] = upright ? ["V", "H"] : ["H", "V"];
  const to = (place: number, beside: number) =>
    upright ? `M${beside} ${place}` : `M${place} ${beside}`;
  const [from, until] = props.ends;
  const ticks = props.ends.map((end) => `${to(end, at - tick)}${across}${at + tick}`).join("");
  return (
    <path
      d={`${to(from, at)}${along}${until}${tick > 0 ? ticks : ""}`}
      stroke="var(--data-1)"
      strokeWidth={strokeWidth}
      pointerEvents="none"
    />
  );
}
