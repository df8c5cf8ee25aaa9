"use client";

import { CartesianGrid, ComposedChart, ResponsiveContainer, XAxis, YAxis } from "recharts";
import type { ControlChart } from "@/lib/views/control-rows";
import { upAxis } from "./chart-axes";
import { ChartKey, type KeyEntry } from "./chart-key";
import { ControlLines } from "./control-lines";
import { ControlPoints } from "./control-points";
import { ControlRebased, rebasedLines } from "./control-rebased";
import { PointPathBox, usePointPath } from "./point-path";

/** A line with gaps over the centre line and the limits by which each of its points is judged. */
export function ControlChartDrawing(props: { chart: ControlChart; height: number }) {
  const { axis, rows, rebased, title } = props.chart;
  const path = usePointPath(rows);
  return (
    <PointPathBox label={title} path={path}>
      <ChartKey entries={keyOf(props.chart)} />
      <ResponsiveContainer width="100%" height={props.height}>
        <ComposedChart
          data={[...rows]}
          accessibilityLayer={false}
          margin={{ top: 28 + rebasedLines(rebased) * 17, right: 12, bottom: 4, left: 0 }}
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
          <YAxis {...upAxis(axis)} />
          <ControlLines rows={rows} path={path} title={axis.title} rebased={rebased} />
          <ControlRebased rows={rows} rebased={rebased} />
          <ControlPoints rows={rows} />
        </ComposedChart>
      </ResponsiveContainer>
    </PointPathBox>
  );
}

function keyOf({ rows }: ControlChart): KeyEntry[] {
  const entries: (KeyEntry | false)[] = [
    rows.some((row) => row.centre !== null) && { sample: "solid", words: "centre line" },
    rows.some((row) => row.lower !== null || row.upper !== null) && {
      sample: "dashed",
      words: "limits",
    },
    rows.some((row) => row.outside === "above") && { sample: "above", words: "above the limits" },
    rows.some((row) => row.outside === "below") && { sample: "below", words: "below the limits" },
  ];
  return entries.filter((entry) => entry !== false);
}
