"use client";

import dynamic from "next/dynamic";
import type { SpreadRow } from "@/lib/views/chart-rows";

const height = 170;

/** How a person's own units are spread, with their median, its interval and a line to compare with. */
export function SpreadStrip(props: { row: SpreadRow }) {
  return (
    <div style={{ minHeight: height + 32 }}>
      <Drawing row={props.row} height={height} />
    </div>
  );
}

const Drawing = dynamic(
  () => import("./spread-strip-drawing").then((file) => file.SpreadStripDrawing),
  {
    ssr: false,
    loading: () => <div className="skeleton-line" />,
  },
);
