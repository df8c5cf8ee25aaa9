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
import type { IntervalChart, IntervalRow } from "@/lib/views/chart-rows";
import { acrossTicks } from "./chart-axes";
import { ChartKey, type KeyEntry } from "./chart-key";
import { ChartMark } from "./chart-mark";
import { textWidth } from "./chart-text";
import { flagKey } from "./flag-key";
import { OuterInterval } from "./outer-interval";
import { PointPathBox, usePointPath } from "./point-path";
import { UprightReferences } from "./reference-lines";
import { Whisker } from "./whisker";

/** Rows from top to bottom, values from left to right, lines to compare with. */
export function IntervalPlotDrawing(props: { chart: IntervalChart; height: number }) {
  const { axis, rows, references, countsTitle, title } = props.chart;
  const path = usePointPath(rows);
  const places = rows.map((_, place) => place);
  const paired = rows.some((row) => row.outer);
  const countsWidth = textWidth([countsTitle, ...rows.map((row) => row.counts)]);
  return (
    <PointPathBox label={title} path={path}>
      <ChartKey entries={[...(paired ? pairKey : []), ...flagKey(rows)]} />
      <ResponsiveContainer width="100%" height={props.height}>
        <ComposedChart
          accessibilityLayer={false}
          margin={{ top: 40, right: countsWidth, bottom: 20, left: 0 }}
        >
          <CartesianGrid horizontal={false} stroke="var(--rule)" />
          <XAxis {...acrossTicks(axis, -14)} interval="equidistantPreserveStart" />
          <YAxis
            type="number"
            domain={[-0.5, rows.length - 0.5]}
            allowDataOverflow
            reversed
            ticks={places}
            interval={0}
            width={textWidth(rows.map((row) => row.label))}
            tickFormatter={(place) => rows[place]?.label ?? ""}
            tick={{ fill: "var(--ink)", fontSize: 14 }}
            tickLine={false}
            axisLine={false}
          />
          <Rows
            rows={rows}
            active={path.active}
            pick={path.pick}
            countsTitle={countsTitle}
            countsWidth={countsWidth}
          />
          <UprightReferences references={references} axis={axis} />
          <Points rows={rows} paired={paired} />
        </ComposedChart>
      </ResponsiveContainer>
    </PointPathBox>
  );
}

/** The estimates with their intervals, thick where a second one lies about them. */
function Points(props: { rows: readonly IntervalRow[]; paired: boolean }) {
  const across = useXAxisScale();
  const down = useYAxisScale();
  if (!across || !down) return null;
  return props.rows.map((row, place) => {
    const { id, estimate, lower, upper, flag } = row;
    if (estimate === null) return null;
    const y = down(place) ?? 0;
    return (
      <g key={id}>
        {lower !== null && upper !== null ? (
          <Whisker
            ends={[across(lower) ?? 0, across(upper) ?? 0]}
            at={y}
            tick={props.paired ? 0 : 5}
            strokeWidth={props.paired ? 4 : 1.75}
          />
        ) : null}
        <ChartMark kind={flag ?? "plain"} x={across(estimate) ?? 0} y={y} />
      </g>
    );
  });
}

const pairKey: KeyEntry[] = [
  { sample: "thick", words: "interval" },
  { sample: "ticked", words: "allowing for units of one patient" },
];

/** What lies behind the points: the row that is read, words where there is nothing to draw, and what the pointer meets. */
function Rows(props: {
  rows: readonly IntervalRow[];
  active: number | null;
  pick: (place: number) => void;
  countsTitle: string;
  countsWidth: number;
}) {
  const area = usePlotArea();
  const across = useXAxisScale();
  const down = useYAxisScale();
  if (!area || !across || !down) return null;
  return (
    <g>
      <text
        x={area.x + area.width + props.countsWidth}
        y={area.y - 6}
        fontSize={14}
        textAnchor="end"
        fill="var(--ink-soft)"
      >
        {props.countsTitle}
      </text>
      {props.rows.map((row, place) => {
        const y = down(place) ?? 0;
        return (
          // biome-ignore lint/a11y/noStaticElementInteractions: the keyboard path is the drawing's own (PointPathBox).
          <g key={row.id} onMouseEnter={() => props.pick(place)} onClick={() => props.pick(place)}>
            <rect
              x={0}
              y={y - 14}
              width={area.x + area.width + props.countsWidth}
              height={28}
              fill={props.active === place ? "var(--wash)" : "transparent"}
              opacity={0.75}
            />
            {row.estimate === null ? (
              <text
                x={area.x + 8}
                y={y + 5}
                fontSize={14}
                fontStyle="italic"
                fill="var(--ink-soft)"
              >
                {row.missing}
              </text>
            ) : null}
            {row.comparison === undefined || row.comparison === null ? null : (
              <line
                x1={across(row.comparison)}
                x2={across(row.comparison)}
                y1={y - 10}
                y2={y + 10}
                stroke="var(--data-reference)"
                strokeWidth={2.5}
              />
            )}
            {row.outer && row.estimate !== null ? (
              <OuterInterval outer={row.outer} across={across} y={y} area={area} />
            ) : null}
            <text
              x={area.x + area.width + props.countsWidth}
              y={y + 5}
              fontSize={14}
              textAnchor="end"
              fill="var(--ink-soft)"
            >
              {row.counts}
            </text>
          </g>
        );
      })}
    </g>
  );
}
