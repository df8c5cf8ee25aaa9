"use client";

import dynamic from "next/dynamic";
import type { ControlChart as Chart } from "@/lib/views/control-rows";
import { rebasedLines } from "./control-rebased";

/** A measure over time with its centre line and limits; periods without a value are gaps. */
export function ControlChart(props: { chart: Chart }) {
  const height = 290 + rebasedLines(props.chart.rebased) * 17;
  return (
    <div style={{ minHeight: height + 60 }}>
      <Drawing chart={props.chart} height={height} />
    </div>
  );
}

const Drawing = dynamic(
  () => import("./control-chart-drawing").then((file) => file.ControlChartDrawing),
  {
    ssr: false,
    loading: () => <div className="skeleton-line" />,
  },
);
