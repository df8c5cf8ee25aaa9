import type { ReactNode } from "react";

/** What is drawn inside is cut at the edge of the plot: an inner drawing clips by itself. */
export function Clipped(props: {
  area: { x: number; y: number; width: number; height: number };
  children: ReactNode;
}) {
  const { x, y, width, height } = props.area;
  return (
    // Half a line of room, so that a line on the edge keeps its width.
    <svg
      x={x}
      y={y - 1}
      width={width}
      height={height + 2}
      viewBox={`${x} ${y - 1} ${width} ${height + 2}`}
      aria-hidden="true"
    >
      {props.children}
    </svg>
  );
}
