import { figureHeads } from "@/lib/views/figure-cells";
import type { FigureRow } from "@/lib/views/figure-row";
import { TableBox } from "./table-box";

/** A table of figures: whose, estimate, interval, counts, what is left out and not recorded; what they are compared with where they are. */
export function FigureTable(props: { label: string; first: string; rows: readonly FigureRow[] }) {
  const compared = props.rows.some((row) => row.compared !== undefined);
  const [estimate, interval, clustered, counts, leftOut, notRecorded] = figureHeads;
  const byPatient = props.rows.some((row) => row.clustered !== "");
  return (
    <TableBox label={props.label}>
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">{props.first}</th>
            <th scope="col" className="num">
              {estimate}
            </th>
            <th scope="col" className="num">
              {interval}
            </th>
            {byPatient ? (
              <th scope="col" className="num">
                {clustered}
              </th>
            ) : null}
            <th scope="col" className="num">
              {counts}
            </th>
            <th scope="col" className="num">
              {notRecorded}
            </th>
            <th scope="col">{leftOut}</th>
            {compared ? <th scope="col">Compared with</th> : null}
          </tr>
        </thead>
        <tbody>
          {props.rows.map((row) => (
            <tr key={row.id} className={row.whole ? "whole" : undefined}>
              <th scope="row">{row.name}</th>
              <td className={row.missing ? "num missing" : "num"} data-label={estimate}>
                {row.estimate}
              </td>
              <td className="num" data-label={interval}>
                {row.interval}
              </td>
              {byPatient ? (
                <td className="num" data-label={clustered}>
                  {row.clustered || "none"}
                </td>
              ) : null}
              <td className="num" data-label={counts}>
                {row.counts}
              </td>
              <td className="num" data-label={notRecorded}>
                {row.notRecorded}
              </td>
              <td data-label={leftOut}>{row.leftOut}</td>
              {compared ? (
                <td className="small" data-label="Compared with">
                  {row.compared}
                </td>
              ) : null}
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
