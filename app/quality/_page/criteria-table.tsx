import { Link } from "@/app/_parts/link";
import type { AdherenceCriterion } from "@/lib/views/adherence-report";
import { TableBox } from "../../_parts/table-box";
import { VerdictMark } from "../../_parts/verdict-mark";

/** Every criterion in a row, as a whole; each leads to its last quarters and to its units. */
export function CriteriaTable(props: { criteria: readonly AdherenceCriterion[]; asked: string }) {
  return (
    <TableBox label="Criteria of the period">
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">Criterion</th>
            <th scope="col" className="num">
              Met of counted
            </th>
            <th scope="col" className="num">
              Not recorded
            </th>
            <th scope="col" className="num">
              Rate
            </th>
            <th scope="col">Interval</th>
            <th scope="col">Target</th>
            <th scope="col">In these records</th>
            <th scope="col">Beyond chance</th>
            <th scope="col">Behind it</th>
          </tr>
        </thead>
        <tbody>
          {props.criteria.map(({ criterion, targetWords, lines }) => {
            const [whole] = lines;
            if (!whole) return null;
            return (
              <tr key={criterion.id} id={`criterion-${criterion.id}`}>
                <th scope="row">
                  <Link href={`/quality/criteria/${criterion.id}?${props.asked}`}>
                    {criterion.title}
                  </Link>
                </th>
                <td className="num" data-label="Met of counted">
                  {whole.words.counts}
                </td>
                <td className="num" data-label="Not recorded">
                  {whole.words.notRecorded}
                </td>
                <td className="num" data-label="Rate">
                  {whole.words.rate}
                </td>
                <td className="nowrap" data-label="Interval">
                  {whole.words.intervalEnds}
                </td>
                <td data-label="Target">{targetWords}</td>
                <td className="verdict" data-label="In these records">
                  <VerdictMark of={whole.inTheseRecords} />
                </td>
                <td className="verdict" data-label="Beyond chance">
                  <VerdictMark of={whole.beyondChance} />
                </td>
                <td data-label="Behind it">
                  <Link href={`/units/criterion/${criterion.id}?${props.asked}`}>Units</Link>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </TableBox>
  );
}
