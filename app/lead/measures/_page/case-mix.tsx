import { FigureTable } from "@/app/_parts/figure-table";
import { Section } from "@/app/_parts/section";
import { TableBox } from "@/app/_parts/table-box";
import type { CaseMixView } from "@/lib/views/case-mix-view";

const heads = ["Observed", "Expected", "Observed ÷ expected", "95 % interval, exact"] as const;

/** Observed against what the clinician's cases would have come to, and the cells behind it. */
export function CaseMix(props: { view: CaseMixView }) {
  const { rows, cells, notes } = props.view;
  return (
    <Section
      id="case-mix"
      title="Case mix"
      note="Whether the cases explain a difference: compare like with like before anyone is asked."
    >
      <TableBox label="Observed and expected by clinician">
        <table className="fold">
          <thead>
            <tr>
              <th scope="col">Clinician</th>
              {heads.map((head) => (
                <th key={head} scope="col" className="num">
                  {head}
                </th>
              ))}
              <th scope="col">Left out</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.id}>
                <th scope="row">{row.name}</th>
                <td className="num" data-label={heads[0]}>
                  {row.observed}
                </td>
                <td className="num" data-label={heads[1]}>
                  {row.expected}
                </td>
                <td className="num" data-label={heads[2]}>
                  {row.ratio}
                </td>
                <td className="num" data-label={heads[3]}>
                  {row.interval}
                </td>
                <td data-label="Left out">{row.notes}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
      <ul className="small">
        {notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
      <details>
        <summary>The cells, all clinicians together ({cells.length})</summary>
        <FigureTable label="Rates by case" first="Tooth group, curvature, treatment" rows={cells} />
      </details>
    </Section>
  );
}
