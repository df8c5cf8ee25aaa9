"use client";

import {
  CartesianGrid,
  ComposedChart,
  ResponsiveContainer,
  usePlotArea,
  useXAxisScale,
  useYAxisScale,
  XAxis,
  YAxis,
} from "recharts";
import type { MonthRow, MonthsChart } from "@/lib/views/chart-rows";
import { textWidth } from "./chart-text";
import { linePath } from "./line-path";
import { PointPathBox, usePointPath } from "./point-path";
import { LevelReferences } from "./reference-lines";
import { Whisker } from "./whisker";

/** A line with whiskers for the intervals and gaps for months without units. */
export function MonthsChartDrawing(props: { chart: MonthsChart; height: number }) {
  const { axis, rows, references, title } = props.chart;
  const path = usePointPath(rows);
  return (
    <PointPathBox label={title} path={path}>
      <ResponsiveContainer width="100%" height={props.height}>
        <ComposedChart
          data={[...rows]}
          accessibilityLayer={false}
          margin={{ top: 34, right: 12, bottom: 4, left: 0 }}
        >
          <CartesianGrid vertical={false} stroke="var(--rule)" />
          <XAxis
            dataKey="id"
            ticks={rows.filter((row) => row.label !== "").map((row) => row.id)}
            tickFormatter={(id) => rows.find((row) => row.id === id)?.label ?? ""}
            tick={{ fill: "var(--ink-soft)", fontSize: 14 }}
            minTickGap={10}
            stroke="var(--rule-strong)"
            padding={{ left: 8, right: 8 }}
          />
          <YAxis
            type="number"
            domain={[axis.min, axis.max]}
            allowDataOverflow
            ticks={axis.ticks.map((tick) => tick.value)}
            tickFormatter={(value) => axis.ticks.find((tick) => tick.value === value)?.words ?? ""}
            tick={{ fill: "var(--ink-soft)", fontSize: 14 }}
            width={textWidth(axis.ticks.map((tick) => tick.words))}
            axisLine={false}
            tickLine={false}
            interval={0}
          />
          <Months rows={rows} active={path.active} pick={path.pick} chart={props.chart} />
          <LevelReferences references={references} />
          <Estimates rows={rows} />
        </ComposedChart>
      </ResponsiveContainer>
    </PointPathBox>
  );
}

function Estimates(props: { rows: readonly MonthRow[] }) {
  const across = useXAxisScale();
  const up = useYAxisScale();
  if (!across || !up) return null;
  const points = props.rows.map(({ id, estimate }) =>
    estimate === null ? null : { x: across(id, { position: "middle" }) ?? 0, y: up(estimate) ?? 0 },
  );
  return (
    <g pointerEvents="none">
      <path d={linePath(points)} fill="none" stroke="var(--data-1)" strokeWidth={2} />
      {props.rows.map(({ id, lower, upper }, place) => {
        const point = points[place];
        if (!point) return null;
        return (
          <g key={id}>
            {lower !== null && upper !== null ? (
              <Whisker
                ends={[up(lower) ?? 0, up(upper) ?? 0]}
                at={point.x}
                tick={3}
                strokeWidth={1.25}
                upright
              />
            ) : null}
            <circle cx={point.x} cy={point.y} r={3.5} fill="var(--data-1)" />
          </g>
        );
      })}
    </g>
  );
}

function Months(props: {
  rows: readonly MonthRow[];
  active: number | null;
  pick: (place: number) => void;
  chart: MonthsChart;
}) {
  const area = usePlotArea();
  const across = useXAxisScale();
  if (!area || !across) return null;
  const width = area.width / props.rows.length;
  return (
    <g>
      <text x={2} y={14} fontSize={14} fill="var(--ink-soft)">
        {props.chart.axis.title}
      </text>
      {/* Over the drawing, where no point lies on the words. */}
      {props.chart.references.map((reference, place) => (
        <text
          key={reference.words}
          x={area.x + area.width}
          y={14 + place * 17}
          fontSize={14}
          textAnchor="end"
          fill="var(--ink)"
        >
          {place === 0 ? "—" : "- -"} {reference.words}
        </text>
      ))}
      {props.rows.map((row, place) => (
        // biome-ignore lint/a11y/noStaticElementInteractions: the keyboard path is the drawing's own (PointPathBox).
        <rect
          key={row.id}
          x={(across(row.id, { position: "middle" }) ?? 0) - width / 2}
          y={area.y}
          width={width}
          height={area.height}
          fill={props.active === place ? "var(--wash)" : "transparent"}
          onMouseEnter={() => props.pick(place)}
          onClick={() => props.pick(place)}
        />
      ))}
    </g>
  );
}
