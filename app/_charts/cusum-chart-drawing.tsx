"use client";

import { CartesianGrid, ComposedChart, ResponsiveContainer, XAxis, YAxis } from "recharts";
import type { CusumChart } from "@/lib/views/control-rows";
import { acrossAxis, upAxis } from "./chart-axes";
import { ChartKey, type KeyEntry } from "./chart-key";
import { CusumPath } from "./cusum-path";
import { PointPathBox, usePointPath } from "./point-path";

/** The path of the sum from canal to canal under its limit, with events and signals to walk along. */
export function CusumChartDrawing(props: { chart: CusumChart; height: number }) {
  const { across, up, points, title } = props.chart;
  const path = usePointPath(points);
  return (
    <PointPathBox label={title} path={path}>
      <ChartKey entries={keyOf(props.chart)} />
      <ResponsiveContainer width="100%" height={props.height}>
        <ComposedChart
          accessibilityLayer={false}
          margin={{ top: 34, right: 20, bottom: 4, left: 0 }}
        >
          <CartesianGrid vertical={false} stroke="var(--rule)" />
          <XAxis {...acrossAxis(across)} />
          <YAxis {...upAxis(up)} />
          <CusumPath chart={props.chart} path={path} />
        </ComposedChart>
      </ResponsiveContainer>
    </PointPathBox>
  );
}

function keyOf({ limit, points }: CusumChart): KeyEntry[] {
  const entries: (KeyEntry | false)[] = [
    { sample: "dashed", words: limit.words },
    points.some((point) => !point.signal) && { sample: "plain", words: "event" },
    points.some((point) => point.signal) && {
      sample: "signal",
      words: "signal; the sum begins again at 0",
    },
  ];
  return entries.filter((entry) => entry !== false);
}
