import { usePlotArea, useXAxisScale, useYAxisScale } from "recharts";
import type { CusumChart } from "@/lib/views/control-rows";
import { ChartMark } from "./chart-mark";
import { Clipped } from "./clipped";
import type { PointPath } from "./point-path";
import { PointTarget } from "./point-target";

type Place = CusumChart["path"][number];

/** The sum as a line, broken where it begins again, the limit, and the points. */
export function CusumPath(props: { chart: CusumChart; path: PointPath }) {
  const area = usePlotArea();
  const across = useXAxisScale();
  const up = useYAxisScale();
  if (!area || !across || !up) return null;
  const { chart, path } = props;
  const limit = up(chart.limit.value) ?? 0;
  const at = (place: Place) => `${across(place.canals)},${up(place.sum)}`;
  return (
    <g>
      <text x={2} y={14} fontSize={14} fill="var(--ink-soft)">
        {chart.up.title}
      </text>
      <Clipped area={area}>
        <line
          x1={area.x}
          x2={area.x + area.width}
          y1={limit}
          y2={limit}
          stroke="var(--data-reference)"
          strokeWidth={1.5}
          strokeDasharray="5 4"
        />
        {runsOf(chart.path).map((run, place) => (
          <polyline
            // biome-ignore lint/suspicious/noArrayIndexKey: the runs of one chart keep their order.
            key={place}
            points={run.map(at).join(" ")}
            fill="none"
            stroke="var(--data-1)"
            strokeWidth={1.5}
            strokeLinejoin="round"
          />
        ))}
      </Clipped>
      {chart.points.map((point, place) => {
        const x = across(point.canals) ?? 0;
        const y = up(point.sum) ?? 0;
        return (
          <g key={point.id}>
            <ChartMark kind={point.signal ? "signal" : "plain"} x={x} y={y} small />
            <PointTarget x={x} y={y} active={path.active === place} pick={() => path.pick(place)} />
          </g>
        );
      })}
    </g>
  );
}

/** The path in runs: a place that stands twice ends one and begins the next. */
function runsOf(path: readonly Place[]): Place[][] {
  const runs: Place[][] = [];
  for (const [place, one] of path.entries()) {
    const last = runs.at(-1);
    if (last && path[place - 1]?.canals !== one.canals) last.push(one);
    else runs.push([one]);
  }
  return runs;
}
