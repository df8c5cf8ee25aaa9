import type { CoverageChair } from "@/lib/views/coverage-calendar";
import { CalendarTable } from "../../_parts/calendar-table";

/** Each chair's days with visits. */
export function Coverage(props: { chairs: readonly CoverageChair[] }) {
  if (props.chairs.length === 0) {
    return (
      <p className="missing">No chair is known yet; the first import of visits brings them.</p>
    );
  }
  return (
    <div className="calendars">
      {props.chairs.map((chair) => (
        <div key={`${chair.practice}/${chair.chair}`} className="stack-tight calendar-box">
          <h3>
            Chair {chair.chair} <span className="small soft">of {chair.practice}</span>
          </h3>
          <CalendarTable
            label={`Visits in chair ${chair.chair} of ${chair.practice}`}
            calendar={chair.calendar}
          />
          <p className="small soft">{chair.summary}</p>
        </div>
      ))}
    </div>
  );
}
