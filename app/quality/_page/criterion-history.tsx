import { Link } from "@/app/_parts/link";
import type { QualityCriterion } from "@/lib/reports/quality-criterion";
import { criterionPopulation } from "@/lib/views/criterion-population";
import { Definition } from "../../_parts/definition";
import { RateDrawing } from "../../_parts/rate-drawing";
import { TableBox } from "../../_parts/table-box";
import { VerdictMark } from "../../_parts/verdict-mark";

/** One criterion: what it demands, the chosen period by practice, and its last quarters with both verdicts. */
export function CriterionHistory(props: { of: QualityCriterion }) {
  const { quarters, rolling } = props.of;
  const { criterion, definition, targetWords, lines } = props.of.of;
  const parts = lines.filter((line) => line.figure.about.kind !== "chair");
  const practice = props.of.practice ? `&practice=${encodeURIComponent(props.of.practice)}` : "";
  const path = `/quality/criteria/${criterion.id}`;
  return (
    <article className="stack" aria-labelledby={`criterion-${criterion.id}`}>
      <div className="stack-tight">
        <h2 id={`criterion-${criterion.id}`}>{criterion.statement}</h2>
        <p>Target {targetWords}</p>
        <Definition of={criterion.title}>
          <p>{definition}</p>
          <p>Counted: {criterionPopulation(criterion)}</p>
          <p>
            {criterion.rationale} {criterion.source}
          </p>
        </Definition>
      </div>
      <div className="columns">
        {parts.map((line) => (
          <div key={line.about} className="figure">
            <span className="small soft">{line.about}</span>
            {line.figure.estimate === null ? (
              <span className="missing">{line.words.rate}</span>
            ) : (
              <>
                <span className="estimate">{line.words.rate}</span>
                <span className="interval">{line.words.interval}</span>
                <span className="counts">
                  {line.words.counts}; {line.words.notMet} not met, {line.words.notRecorded} not
                  recorded
                </span>
              </>
            )}
            <span>
              In these records: <VerdictMark of={line.inTheseRecords} />
            </span>
            <span>
              Beyond chance: <VerdictMark of={line.beyondChance} />
            </span>
          </div>
        ))}
      </div>
      {rolling ? <p className="note">{rolling}</p> : null}
      <p className="small soft">
        By quarter, {parts[0]?.about}. The dashed line is the target, the bar the interval.
      </p>
      <TableBox label={`${criterion.title} by quarter`}>
        <table>
          <thead>
            <tr>
              <th scope="col">Quarter</th>
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
              <th scope="col" className="drawn">
                <span className="scale" aria-hidden="true">
                  <span>{quarters.from}</span>
                  <span>{quarters.to}</span>
                </span>
                <span className="only-heard">Drawn</span>
              </th>
              <th scope="col">In these records</th>
              <th scope="col">Beyond chance</th>
            </tr>
          </thead>
          <tbody>
            {quarters.lines.map((line) => (
              <tr key={line.name} className={line.chosen ? "chosen" : undefined}>
                <th scope="row" className="nowrap">
                  {line.chosen ? (
                    line.quarter
                  ) : (
                    <Link href={`${path}?period=${line.name}${practice}`}>{line.quarter}</Link>
                  )}
                </th>
                {line.figure.estimate === null ? (
                  <td colSpan={7} className="missing">
                    {line.words.rate}
                  </td>
                ) : (
                  <>
                    <td className="num" data-label="Met of counted">
                      {line.words.counts}
                    </td>
                    <td className="num" data-label="Not recorded">
                      {line.words.notRecorded}
                    </td>
                    <td className="num" data-label="Rate">
                      {line.words.rate}
                    </td>
                    <td className="nowrap" data-label="Interval">
                      {line.words.intervalEnds}
                    </td>
                    <td className="drawn">
                      <RateDrawing drawing={line.drawing} />
                    </td>
                    <td className="verdict" data-label="In these records">
                      <VerdictMark of={line.inTheseRecords} />
                    </td>
                    <td className="verdict" data-label="Beyond chance">
                      <VerdictMark of={line.beyondChance} />
                    </td>
                  </>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </article>
  );
}
