/** The shapes a point can have: colour never says it alone. */
export type MarkKind = "plain" | "look" | "look first" | "above" | "below" | "signal";

/** A point of a chart, small where it is one of many on a line; it leaves the pointer to what lies over it. */
export function ChartMark(props: { kind: MarkKind; x: number; y: number; small?: boolean }) {
  const { kind, x, y, small } = props;
  if (kind === "plain") {
    return (
      <circle cx={x} cy={y} r={small ? 3.25 : 4.5} fill="var(--data-1)" pointerEvents="none" />
    );
  }
  return (
    <path
      d={outlines[kind]}
      transform={`translate(${x} ${y})`}
      fill={kind === "look" ? "var(--paper)" : "var(--data-2)"}
      stroke="var(--data-2)"
      strokeWidth={2}
      pointerEvents="none"
    />
  );
}

const diamond = "M0 -6.5L6.5 0L0 6.5L-6.5 0Z";

const outlines = {
  look: diamond,
  "look first": diamond,
  signal: diamond,
  above: "M0 -6L6 5L-6 5Z",
  below: "M0 6L6 -5L-6 -5Z",
};
