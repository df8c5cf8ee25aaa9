import { FunnelPlot } from "@/app/_charts/funnel-plot";
import type { FunnelChart } from "@/lib/views/funnel-rows";
import { unbroken } from "@/lib/views/unbroken";
import { ChartNotes } from "./chart-notes";
import { ChartTable } from "./chart-table";

/** A funnel with the sentence it comes to, what has to be said of it and its table. */
export function FunnelFigure(props: { chart: FunnelChart }) {
  const { chart } = props;
  const drawn = chart.points.length > 0;
  return (
    <figure className="chart">
      <figcaption className="chart-title">{unbroken(chart.title)}</figcaption>
      {drawn ? <FunnelPlot chart={chart} /> : null}
      <ChartNotes notes={chart.notes} />
      {drawn ? <ChartTable label={chart.title} table={chart.table} /> : null}
    </figure>
  );
}
