import { useXAxisScale, useYAxisScale } from "recharts";
import type { ControlRow } from "@/lib/views/control-rows";
import { ChartMark } from "./chart-mark";
import { linePath } from "./line-path";

/** The points, and the line through them with its gaps. */
export function ControlPoints(props: { rows: readonly ControlRow[] }) {
  const across = useXAxisScale();
  const up = useYAxisScale();
  if (!across || !up) return null;
  const { rows } = props;
  const points = rows.map(({ id, value }) =>
    value === null ? null : { x: across(id, { position: "middle" }) ?? 0, y: up(value) ?? 0 },
  );
  return (
    <g pointerEvents="none">
      <path d={linePath(points)} fill="none" stroke="var(--data-1)" strokeWidth={1.5} />
      {rows.map((row, place) => {
        const point = points[place];
        return point ? (
          <ChartMark key={row.id} kind={row.outside ?? "plain"} x={point.x} y={point.y} small />
        ) : null;
      })}
    </g>
  );
}
