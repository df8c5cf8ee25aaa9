"use client";

import { CartesianGrid, ComposedChart, ResponsiveContainer, XAxis, YAxis } from "recharts";
import type { FunnelChart } from "@/lib/views/funnel-rows";
import { acrossAxis, upAxis } from "./chart-axes";
import { ChartKey } from "./chart-key";
import { textWidth } from "./chart-text";
import { flagKey } from "./flag-key";
import { FunnelLimits } from "./funnel-limits";
import { FunnelPoints } from "./funnel-points";
import { PointPathBox, usePointPath } from "./point-path";

/** Points over the limits; whether a point is flagged is told by its shape and never read off the lines. */
export function FunnelPlotDrawing(props: { chart: FunnelChart; height: number }) {
  const { across, up, centre, limits, points, title } = props.chart;
  const path = usePointPath(points);
  return (
    <PointPathBox label={title} path={path}>
      <ChartKey entries={[{ sample: "solid", words: centre.words }, ...flagKey(points)]} />
      <ResponsiveContainer width="100%" height={props.height}>
        <ComposedChart
          accessibilityLayer={false}
          margin={{ top: 44, right: textWidth(["99.8 %"]), bottom: 4, left: 0 }}
        >
          <CartesianGrid vertical={false} stroke="var(--rule)" />
          <XAxis {...acrossAxis(across)} />
          <YAxis {...upAxis(up)} />
          <FunnelLimits limits={limits} centre={centre.value} up={up} />
          <FunnelPoints points={points} path={path} title={up.title} />
        </ComposedChart>
      </ResponsiveContainer>
    </PointPathBox>
  );
}
