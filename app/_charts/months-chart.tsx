"use client";

import dynamic from "next/dynamic";
import type { MonthsChart as Chart } from "@/lib/views/chart-rows";

const height = 240;

/** A measure month by month; months without units are gaps. */
export function MonthsChart(props: { chart: Chart }) {
  return (
    <div style={{ minHeight: height + 32 }}>
      <Drawing chart={props.chart} height={height} />
    </div>
  );
}

const Drawing = dynamic(
  () => import("./months-chart-drawing").then((file) => file.MonthsChartDrawing),
  {
    ssr: false,
    loading: () => <div className="skeleton-line" />,
  },
);
