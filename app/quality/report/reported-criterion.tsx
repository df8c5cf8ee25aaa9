import type { AdherenceCriterion } from "@/lib/views/adherence-report";
import { criterionPopulation } from "@/lib/views/criterion-population";
import { unbroken } from "@/lib/views/unbroken";
import { Section } from "../../_parts/section";
import { TableBox } from "../../_parts/table-box";
import { VerdictMark } from "../../_parts/verdict-mark";

/** One criterion as the report has it: definition, target, and its figures with every count. */
export function ReportedCriterion(props: { of: AdherenceCriterion }) {
  const { criterion, definition, targetWords, lines } = props.of;
  return (
    <Section id={criterion.id} title={criterion.title} note={`Target ${targetWords}`}>
      <p>{definition}</p>
      <p className="soft">
        Counted: {criterionPopulation(criterion)} Source: {criterion.source}
      </p>
      <TableBox label={`${criterion.title}: figures`}>
        <table className="fold reported">
          <thead>
            <tr>
              <th scope="col">Where</th>
              <th scope="col" className="num">
                In all
              </th>
              <th scope="col">Left out</th>
              <th scope="col" className="num">
                Eligible
              </th>
              <th scope="col">Excepted</th>
              <th scope="col" className="num">
                Met
              </th>
              <th scope="col" className="num">
                Not met
              </th>
              <th scope="col" className="num">
                Not recorded
              </th>
              <th scope="col">Rate and interval</th>
              <th scope="col">In these records</th>
              <th scope="col">Beyond chance</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <tr
                key={line.about}
                className={line.figure.about.kind === "group" ? "whole" : undefined}
              >
                <th scope="row">{line.about}</th>
                <td className="num" data-label="In all">
                  {line.words.population}
                </td>
                <td className="reasons" data-label="Left out">
                  {line.words.leftOut}
                </td>
                <td className="num" data-label="Eligible">
                  {line.words.eligible}
                </td>
                <td data-label="Excepted">{line.words.excepted}</td>
                <td className="num" data-label="Met">
                  {line.words.met}
                </td>
                <td className="num" data-label="Not met">
                  {line.words.notMet}
                </td>
                <td className="num" data-label="Not recorded">
                  {line.words.notRecorded}
                </td>
                <td className="rate-words" data-label="Rate and interval">
                  {line.words.rate}
                  {line.words.interval ? (
                    <div className="small soft">{line.words.interval}</div>
                  ) : null}
                  {line.read ? <div className="small soft">{unbroken(line.read)}</div> : null}
                  {line.words.bounds ? <div className="small soft">{line.words.bounds}</div> : null}
                  {line.change ? <div className="small">{unbroken(line.change)}</div> : null}
                </td>
                <td className="verdict" data-label="In these records">
                  <VerdictMark of={line.inTheseRecords} />
                </td>
                <td className="verdict" data-label="Beyond chance">
                  <VerdictMark of={line.beyondChance} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </Section>
  );
}
