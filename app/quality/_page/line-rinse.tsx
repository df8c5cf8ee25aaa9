import type { AdherenceCriterion } from "@/lib/views/adherence-report";
import type { UpkeepCalendar } from "@/lib/views/upkeep-calendar";
import { CalendarTable } from "../../_parts/calendar-table";
import { TableBox } from "../../_parts/table-box";
import { VerdictMark } from "../../_parts/verdict-mark";

/** The line rinse: a table by practice and chair, then each chair's days. */
export function LineRinse(props: {
  criterion: AdherenceCriterion | undefined;
  upkeep: UpkeepCalendar;
}) {
  const { criterion, upkeep } = props;
  if (!criterion || upkeep.chairs.length === 0) {
    return (
      <p className="missing">
        No visit with a continuous delivery started in any chair in this period.
      </p>
    );
  }
  return (
    <>
      <TableBox label="Line rinse by practice and chair">
        <table className="fold rinse">
          <thead>
            <tr>
              <th scope="col">Where</th>
              <th scope="col" className="num">
                Rinsed of chair-days
              </th>
              <th scope="col" className="num">
                Not rinsed or too short
              </th>
              <th scope="col" className="num">
                Not recorded
              </th>
              <th scope="col" className="num">
                Left out
              </th>
              <th scope="col" className="num">
                Rate
              </th>
              <th scope="col">Interval</th>
              <th scope="col">In these records</th>
              <th scope="col">Beyond chance</th>
            </tr>
          </thead>
          <tbody>
            {criterion.lines.map((line) => (
              <tr
                key={line.about}
                className={line.figure.about.kind === "chair" ? undefined : "whole"}
              >
                <th scope="row">{line.about}</th>
                <td className="num" data-label="Rinsed of chair-days">
                  {line.words.counts}
                </td>
                <td className="num" data-label="Not rinsed or too short">
                  {line.words.notMet}
                </td>
                <td className="num" data-label="Not recorded">
                  {line.words.notRecorded}
                </td>
                <td className="num" data-label="Left out">
                  {line.words.leftOut}
                </td>
                <td className="num" data-label="Rate">
                  {line.words.rate}
                </td>
                <td className="nowrap" data-label="Interval">
                  {line.words.intervalEnds}
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
      <ul className="legend small" aria-label="What the shapes mean, with chair-days">
        {upkeep.legend.map((one) => (
          <li key={one.words}>
            {one.shape} {one.words}: {one.days}
          </li>
        ))}
        <li>· not in use</li>
      </ul>
      <div className="calendars">
        {upkeep.chairs.map((chair) => (
          <div key={`${chair.practice}/${chair.chair}`} className="stack-tight calendar-box">
            <h3>
              Chair {chair.chair} <span className="small soft">of {chair.practice}</span>
            </h3>
            <CalendarTable
              label={`Line rinse in chair ${chair.chair} of ${chair.practice}`}
              calendar={chair.calendar}
            />
            <p className="small soft">{chair.summary}</p>
          </div>
        ))}
      </div>
      <details>
        <summary>The days that were not rinsed for 30 s or longer, as a list</summary>
        <TableBox label="Days not rinsed for 30 s or longer">
          <table>
            <thead>
              <tr>
                <th scope="col">Chair</th>
                <th scope="col">Day</th>
                <th scope="col">What became of it</th>
              </tr>
            </thead>
            <tbody>
              {upkeep.list.map((one) => (
                <tr key={one.id}>
                  <th scope="row">{one.chair}</th>
                  <td className="nowrap">{one.day}</td>
                  <td>{one.words}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableBox>
      </details>
    </>
  );
}
