"use client";

import {
  CartesianGrid,
  ErrorBar,
  ReferenceLine,
  ResponsiveContainer,
  Scatter,
  ScatterChart,
  usePlotArea,
  useXAxisScale,
  useYAxisScale,
  XAxis,
  YAxis,
} from "recharts";
import type { IntervalChart, IntervalRow } from "@/lib/views/chart-rows";
import { ChartKey, type KeyEntry } from "./chart-key";
import { ChartMark } from "./chart-mark";
import { referenceLabel, textWidth } from "./chart-text";
import { flagKey } from "./flag-key";
import { OuterInterval } from "./outer-interval";
import { PointPathBox, usePointPath } from "./point-path";

/** Rows from top to bottom, values from left to right, lines to compare with. */
export function IntervalPlotDrawing(props: { chart: IntervalChart; height: number }) {
  const { axis, rows, references, countsTitle, title } = props.chart;
  const path = usePointPath(rows);
  const drawn = rows.flatMap((row, place) =>
    row.estimate === null ? [] : [pointOf(row, row.estimate, place)],
  );
  const places = rows.map((_, place) => place);
  const paired = rows.some((row) => row.outer);
  const countsWidth = textWidth([countsTitle, ...rows.map((row) => row.counts)]);
  return (
    <PointPathBox label={title} path={path}>
      <ChartKey entries={[...(paired ? pairKey : []), ...flagKey(rows)]} />
      <ResponsiveContainer width="100%" height={props.height}>
        <ScatterChart
          accessibilityLayer={false}
          margin={{ top: 40, right: countsWidth, bottom: 20, left: 0 }}
        >
          <CartesianGrid horizontal={false} stroke="var(--rule)" />
          <XAxis
            type="number"
            dataKey="value"
            domain={[axis.min, axis.max]}
            ticks={axis.ticks.map((tick) => tick.value)}
            tickFormatter={(value) => axis.ticks.find((tick) => tick.value === value)?.words ?? ""}
            tick={{ fill: "var(--ink-soft)", fontSize: 14 }}
            interval="equidistantPreserveStart"
            stroke="var(--rule-strong)"
            label={{
              value: axis.title,
              position: "insideBottom",
              offset: -14,
              fill: "var(--ink-soft)",
              fontSize: 14,
            }}
          />
          <YAxis
            type="number"
            domain={[-0.5, rows.length - 0.5]}
            reversed
            ticks={places}
            interval={0}
            yAxisId="whose"
            dataKey="place"
            width={textWidth(rows.map((row) => row.label))}
            tickFormatter={(place) => rows[place]?.label ?? ""}
            tick={{ fill: "var(--ink)", fontSize: 14 }}
            tickLine={false}
            axisLine={false}
          />
          {references.map((reference, place) => (
            <ReferenceLine
              key={reference.words}
              yAxisId="whose"
              x={reference.value}
              stroke="var(--data-reference)"
              strokeWidth={1.5}
              strokeDasharray={place === 0 ? undefined : "5 4"}
              label={referenceLabel(reference, axis, place)}
            />
          ))}
          <Rows
            rows={rows}
            active={path.active}
            pick={path.pick}
            countsTitle={countsTitle}
            countsWidth={countsWidth}
          />
          <Scatter
            yAxisId="whose"
            data={drawn}
            isAnimationActive={false}
            shape={mark}
            tooltipType="none"
          >
            <ErrorBar
              dataKey="reaches"
              direction="x"
              width={paired ? 0 : 5}
              stroke="var(--data-1)"
              strokeWidth={paired ? 4 : 1.75}
              isAnimationActive={false}
            />
          </Scatter>
        </ScatterChart>
      </ResponsiveContainer>
    </PointPathBox>
  );
}

function pointOf(row: IntervalRow, value: number, place: number) {
  const reaches =
    row.lower === null || row.upper === null ? [0, 0] : [value - row.lower, row.upper - value];
  return { value, place, reaches, flag: row.flag };
}

function mark(point: { cx?: number; cy?: number; flag?: IntervalRow["flag"] }) {
  return <ChartMark kind={point.flag ?? "plain"} x={point.cx ?? 0} y={point.cy ?? 0} />;
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
  const down = useYAxisScale("whose");
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
