import { CalendarTable } from "@/app/_parts/calendar-table";
import { TableBox } from "@/app/_parts/table-box";
import type { UpkeepPage } from "@/lib/reports/upkeep-page";

/** A task's days, chair by chair, and the days that ask for a look as a list. */
export function Calendars(props: { of: UpkeepPage }) {
  const { calendar, task } = props.of;
  return (
    <>
      <ul className="legend small" aria-label="What the shapes mean, with chair-days">
        {calendar.legend.map((one) => (
          <li key={one.words}>
            {one.shape} {one.words}: {one.days}
          </li>
        ))}
        <li>· not in use</li>
      </ul>
      <div className="calendars">
        {calendar.chairs.map(({ practice, chair, calendar: days, summary }) => (
          <div key={`${practice}/${chair}`} className="stack-tight calendar-box">
            <h3>
              Chair {chair} <span className="small soft">of {practice}</span>
            </h3>
            <CalendarTable
              label={`${task.words} in chair ${chair} of ${practice}`}
              calendar={days}
            />
            <p className="small soft">{summary}</p>
          </div>
        ))}
      </div>
      {calendar.list.length > 0 ? (
        <details>
          <summary>The days in use that were not as they should be, as a list</summary>
          <TableBox label="Days in use that were not as they should be">
            <table>
              <thead>
                <tr>
                  <th scope="col">Chair</th>
                  <th scope="col">Day</th>
                  <th scope="col">In the records</th>
                </tr>
              </thead>
              <tbody>
                {calendar.list.map((one) => (
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
      ) : null}
    </>
  );
}
