import { MonthsChart } from "@/app/_charts/months-chart";
import type { MonthsChart as Chart } from "@/lib/views/chart-rows";
import { unbroken } from "@/lib/views/unbroken";
import { ChartTable } from "./chart-table";

/** A chart over months with the sentence it comes to and its table. */
export function MonthsFigure(props: { chart: Chart }) {
  return (
    <figure className="chart">
      <figcaption className="chart-title">{unbroken(props.chart.title)}</figcaption>
      {props.chart.rows.some((row) => row.estimate !== null) ? (
        <>
          <MonthsChart chart={props.chart} />
          <ChartTable label={props.chart.title} table={props.chart.table} />
        </>
      ) : null}
    </figure>
  );
}
