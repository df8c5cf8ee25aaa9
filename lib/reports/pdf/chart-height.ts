import type { DocumentBlock } from "@/lib/views/document/document";
import { widthOf } from "./font";
import { intervalLayout } from "./interval-layout";
import { linesWithin } from "./lines-within";
import { leading, sizes } from "./look";
import { monthsHeight } from "./months-layout";

export type ChartBlock = Extract<DocumentBlock, { kind: "intervals" | "months" }>;

/** A chart is no wider than this: longer lines tell nothing more. */
export function chartWidth(width: number): number {
  return Math.min(width, 560);
}

/** What a chart takes with its title, without its notes. */
export function chartHeight(block: ChartBlock, width: number): number {
  const size = sizes.body;
  const title = linesWithin(block.chart.title, { width, size, face: "strong" }).length;
  const drawing =
    block.kind === "intervals"
      ? intervalLayout(block.chart, chartWidth(width), widthOf).height
      : monthsHeight;
  return title * size * leading + 6 + drawing;
}
