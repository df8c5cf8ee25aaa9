"use client";

import dynamic from "next/dynamic";
import type { IntervalChart } from "@/lib/views/chart-rows";

/** Estimates with their intervals, a row each; room is kept for the drawing while it is on its way. */
export function IntervalPlot(props: { chart: IntervalChart }) {
  return (
    <div style={{ minHeight: intervalPlotHeight(props.chart) + 32 }}>
      <Drawing chart={props.chart} height={intervalPlotHeight(props.chart)} />
    </div>
  );
}

const Drawing = dynamic(
  () => import("./interval-plot-drawing").then((file) => file.IntervalPlotDrawing),
  {
    ssr: false,
    loading: () => <div className="skeleton-line" />,
  },
);

function intervalPlotHeight(chart: IntervalChart): number {
  return 96 + chart.rows.length * 28;
}
