import { CusumChart } from "@/app/_charts/cusum-chart";
import type { CusumChart as Chart } from "@/lib/views/control-rows";
import { unbroken } from "@/lib/views/unbroken";
import { ChartNotes } from "./chart-notes";
import { ChartTable } from "./chart-table";

/** A running sum with the sentence it comes to, what has to be said of it and its table. */
export function CusumFigure(props: { chart: Chart }) {
  const { chart } = props;
  const drawn = chart.path.length > 0;
  return (
    <figure className="chart">
      <figcaption className="chart-title">{unbroken(chart.title)}</figcaption>
      {drawn ? <CusumChart chart={chart} /> : null}
      <ChartNotes notes={chart.notes} />
      {drawn ? <ChartTable label={chart.title} table={chart.table} /> : null}
    </figure>
  );
}
