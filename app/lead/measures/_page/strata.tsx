import { FigureTable } from "@/app/_parts/figure-table";
import { IntervalFigure } from "@/app/_parts/interval-figure";
import { Section } from "@/app/_parts/section";
import { TableBox } from "@/app/_parts/table-box";
import type { MeasureView } from "@/lib/views/measure-page";
import type { StrataView } from "@/lib/views/strata-view";

/** Like with like: by preparation and delivery, and how the values were arrived at. */
export function Strata(props: { strata: StrataView; basis: NonNullable<MeasureView["basis"]> }) {
  return (
    <Section
      id="strata"
      title="Like with like"
      note="By preparation and delivery: compare within one of these first. A stratum is drawn where it has a tenth of the canals."
    >
      <div className="charts">
        {props.strata.charts.map((chart) => (
          <IntervalFigure key={chart.title} chart={chart} />
        ))}
      </div>
      <FigureTable
        label="By preparation and delivery"
        first="Preparation, delivery"
        rows={props.strata.rows}
      />
      <h3>How the values were arrived at</h3>
      <TableBox label="Shares by basis">
        <table className="fold">
          <thead>
            <tr>
              <th scope="col">Basis</th>
              <th scope="col" className="num">
                Canals
              </th>
              <th scope="col" className="num">
                Share
              </th>
              <th scope="col" className="num">
                Clinicians
              </th>
            </tr>
          </thead>
          <tbody>
            {props.basis.map((row) => (
              <tr key={row.basis}>
                <th scope="row">{row.basis}</th>
                <td className="num" data-label="Canals">
                  {row.canals}
                </td>
                <td className="num" data-label="Share">
                  {row.share}
                </td>
                <td className="num" data-label="Clinicians">
                  {row.clinicians}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </Section>
  );
}
