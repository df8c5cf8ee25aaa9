import { SpreadStrip } from "@/app/_charts/spread-strip";
import type { SpreadRow } from "@/lib/views/chart-rows";
import { unbroken } from "@/lib/views/unbroken";
import { ChartTable } from "./chart-table";

/** A person's own units as they are spread, with the sentence it comes to and its table. */
export function SpreadFigure(props: { row: SpreadRow }) {
  return (
    <figure className="chart">
      <figcaption className="chart-title">{unbroken(props.row.title)}</figcaption>
      <SpreadStrip row={props.row} />
      <ChartTable label={props.row.title} table={props.row.table} />
    </figure>
  );
}
