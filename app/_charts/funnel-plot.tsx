"use client";

import dynamic from "next/dynamic";
import type { FunnelChart } from "@/lib/views/funnel-rows";

const height = 380;

/** Rates against numbers of units, between the limits that chance alone draws. */
export function FunnelPlot(props: { chart: FunnelChart }) {
  return (
    <div style={{ minHeight: height + 60 }}>
      <Drawing chart={props.chart} height={height} />
    </div>
  );
}

const Drawing = dynamic(
  () => import("./funnel-plot-drawing").then((file) => file.FunnelPlotDrawing),
  {
    ssr: false,
    loading: () => <div className="skeleton-line" />,
  },
);
