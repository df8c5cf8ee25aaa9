"use client";

import {
  CartesianGrid,
  ComposedChart,
  ErrorBar,
  Line,
  ReferenceLine,
  ResponsiveContainer,
  usePlotArea,
  useXAxisScale,
  XAxis,
  YAxis,
} from "recharts";
import type { MonthRow, MonthsChart } from "@/lib/views/chart-rows";
import { textWidth } from "./chart-text";
import { PointPathBox, usePointPath } from "./point-path";

/** A line with whiskers for the intervals and gaps for months without units. */
export function MonthsChartDrawing(props: { chart: MonthsChart; height: number }) {
  const { axis, rows, references, title } = props.chart;
  const path = usePointPath(rows);
  return (
    <PointPathBox label={title} path={path}>
      <ResponsiveContainer width="100%" height={props.height}>
        <ComposedChart
          data={rows.map(pointOf)}
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
            ticks={axis.ticks.map((tick) => tick.value)}
            tickFormatter={(value) => axis.ticks.find((tick) => tick.value === value)?.words ?? ""}
            tick={{ fill: "var(--ink-soft)", fontSize: 14 }}
            width={textWidth(axis.ticks.map((tick) => tick.words))}
            axisLine={false}
            tickLine={false}
            interval={0}
          />
          <Months rows={rows} active={path.active} pick={path.pick} chart={props.chart} />
          {references.map((reference, place) => (
            <ReferenceLine
              key={reference.words}
              y={reference.value}
              stroke="var(--data-reference)"
              strokeWidth={1.5}
              strokeDasharray={place === 0 ? undefined : "5 4"}
            />
          ))}
          <Line
            dataKey="estimate"
            connectNulls={false}
            isAnimationActive={false}
            stroke="var(--data-1)"
            strokeWidth={2}
            dot={{ r: 3.5, fill: "var(--data-1)", stroke: "none" }}
            activeDot={false}
          >
            <ErrorBar
              dataKey="reaches"
              width={3}
              stroke="var(--data-1)"
              strokeWidth={1.25}
              isAnimationActive={false}
            />
          </Line>
        </ComposedChart>
      </ResponsiveContainer>
    </PointPathBox>
  );
}

function pointOf(row: MonthRow) {
  const { id, estimate, lower, upper } = row;
  const reaches =
    estimate === null || lower === null || upper === null
      ? undefined
      : [estimate - lower, upper - estimate];
  return { id, estimate, reaches };
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
