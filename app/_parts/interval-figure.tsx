import { IntervalPlot } from "@/app/_charts/interval-plot";
import type { IntervalChart } from "@/lib/views/chart-rows";
import { ChartTable } from "./chart-table";

/** An interval plot with the sentence it comes to and its table. */
export function IntervalFigure(props: { chart: IntervalChart }) {
  return (
    <figure className="chart">
      <figcaption className="chart-title">{props.chart.title}</figcaption>
      <IntervalPlot chart={props.chart} />
      {props.chart.comparisonWords ? <p className="small soft">{props.chart.comparisonWords}</p> : null}
      <ChartTable label={props.chart.title} table={props.chart.table} />
    </figure>
  );
}
