import type { DocumentBlock } from "@/lib/views/document/document";
import { chartHeight } from "./chart-height";
import { leading, sizes } from "./look";
import { columnWidths, headHeight, rowHeight } from "./table-layout";

/** What has to fit under a heading for it to stay on a page: the beginning of what comes, in points. */
export function roomAtStart(blocks: readonly DocumentBlock[], width: number): number {
  const [first, ...others] = blocks;
  if (!first) return 0;
  switch (first.kind) {
    case "heading":
      return 12 + sizes.heading * leading + roomAtStart(others, width);
    case "table": {
      const widths = columnWidths(first, width);
      const rows = first.rows.slice(0, 2).map((row) => rowHeight(row.cells, widths));
      return (
        18 + headHeight(first, widths) + rows.reduce((sum, high) => sum + Math.min(high, 300), 0)
      );
    }
    case "intervals":
    case "months":
      return chartHeight(first, width);
    default:
      return 3 * sizes.body * leading;
  }
}
