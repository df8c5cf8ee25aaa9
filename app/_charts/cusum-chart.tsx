"use client";

import dynamic from "next/dynamic";
import type { CusumChart as Chart } from "@/lib/views/control-rows";

const height = 280;

/** A running sum over treated canals, and the limit at which it signals. */
export function CusumChart(props: { chart: Chart }) {
  return (
    <div style={{ minHeight: height + 60 }}>
      <Drawing chart={props.chart} height={height} />
    </div>
  );
}

const Drawing = dynamic(
  () => import("./cusum-chart-drawing").then((file) => file.CusumChartDrawing),
  {
    ssr: false,
    loading: () => <div className="skeleton-line" />,
  },
);
