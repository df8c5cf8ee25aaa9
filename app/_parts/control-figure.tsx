import { ControlChart } from "@/app/_charts/control-chart";
import type { ControlChart as Chart } from "@/lib/views/control-rows";
import { unbroken } from "@/lib/views/unbroken";
import { ChartNotes } from "./chart-notes";
import { ChartTable } from "./chart-table";

/** A control chart with the sentence it comes to, which chart it is and why, its signals in words and its table. */
export function ControlFigure(props: { chart: Chart }) {
  const { chart } = props;
  const drawn = chart.rows.some((row) => row.value !== null);
  return (
    <figure className="chart">
      <figcaption className="chart-title">{unbroken(chart.title)}</figcaption>
      <p className="small soft">{chart.kind}</p>
      {drawn ? <ControlChart chart={chart} /> : null}
      {chart.signals.length > 0 ? (
        <ul className="notes">
          {chart.signals.map((signal) => (
            <li key={signal}>{unbroken(signal)}</li>
          ))}
        </ul>
      ) : null}
      <ChartNotes notes={chart.notes} />
      {drawn ? <ChartTable label={chart.title} table={chart.table} /> : null}
    </figure>
  );
}
