import { IntervalPlot } from "@/app/_charts/interval-plot";
import type { IntervalChart } from "@/lib/views/chart-rows";
import { unbroken } from "@/lib/views/unbroken";
import { ChartTable } from "./chart-table";

/** An interval plot with the sentence it comes to and its table, which is left out where one stands beside it. */
export function IntervalFigure(props: { chart: IntervalChart; tableBeside?: boolean }) {
  const drawn = props.chart.rows.some((row) => row.estimate !== null);
  return (
    <figure className="chart">
      <figcaption className="chart-title">{unbroken(props.chart.title)}</figcaption>
      {drawn ? <IntervalPlot chart={props.chart} /> : null}
      {props.chart.notes ? <p className="small soft">{props.chart.notes.join(" ")}</p> : null}
      {props.tableBeside || !drawn ? null : (
        <ChartTable label={props.chart.title} table={props.chart.table} />
      )}
    </figure>
  );
}
