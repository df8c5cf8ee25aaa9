import { Section } from "@/app/_parts/section";
import { TableBox } from "@/app/_parts/table-box";
import { VerdictMark } from "@/app/_parts/verdict-mark";
import type { CriterionCounts } from "@/lib/views/criterion-counts";

/** A criterion's outcomes as counts, with what not recorded leaves open and both verdicts. */
export function Outcomes(props: { rows: readonly CriterionCounts[] }) {
  return (
    <Section
      id="outcomes"
      title="Met, not met, excepted, not recorded"
      note="The two bounds are the rate were all that is not recorded not met, and were it met. Two verdicts, never mixed, on practices and chairs and never on a person."
    >
      <TableBox label="Outcomes and verdicts">
        <table className="fold">
          <thead>
            <tr>
              <th scope="col">Whose</th>
              <th scope="col" className="num">
                Met
              </th>
              <th scope="col" className="num">
                Not met
              </th>
              <th scope="col" className="num">
                Excepted
              </th>
              <th scope="col" className="num">
                Not recorded
              </th>
              <th scope="col" className="num">
                Between the bounds
              </th>
              <th scope="col">In these records</th>
              <th scope="col">Beyond chance</th>
            </tr>
          </thead>
          <tbody>
            {props.rows.map((row) => (
              <tr key={row.id} className={row.whole ? "whole" : undefined}>
                <th scope="row">{row.name}</th>
                <td className="num" data-label="Met">
                  {row.met}
                </td>
                <td className="num" data-label="Not met">
                  {row.notMet}
                </td>
                <td className="num" data-label="Excepted">
                  {row.excepted}
                </td>
                <td className="num" data-label="Not recorded">
                  {row.notRecorded}
                </td>
                <td className="num" data-label="Between the bounds">
                  {row.bounds}
                </td>
                <td data-label="In these records">
                  {row.inTheseRecords ? <VerdictMark of={row.inTheseRecords} /> : null}
                </td>
                <td data-label="Beyond chance">
                  {row.beyondChance ? <VerdictMark of={row.beyondChance} /> : null}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </Section>
  );
}
