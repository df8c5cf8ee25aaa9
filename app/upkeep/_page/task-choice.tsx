import type { UpkeepPage } from "@/lib/reports/upkeep-page";

/** Chooses the task and the chair; a plain form, the address carries both. */
export function TaskChoice(props: { of: UpkeepPage }) {
  const { task, tasks, chair, chairs, period, practice } = props.of;
  return (
    <form action="/upkeep" method="get" aria-label="Task and chair" className="picker">
      <div className="form-row">
        <input type="hidden" name="period" value={period.name} />
        {practice ? <input type="hidden" name="practice" value={practice} /> : null}
        <div>
          <label htmlFor="choice-task">Task</label>
          <select id="choice-task" name="task" defaultValue={task.name} key={task.name}>
            {tasks.map((one) => (
              <option key={one.name} value={one.name}>
                {one.words}
              </option>
            ))}
          </select>
        </div>
        <div>
          <label htmlFor="choice-chair">Chair</label>
          <select id="choice-chair" name="chair" defaultValue={chair ?? ""} key={chair ?? ""}>
            <option value="">All chairs</option>
            {chairs.map((one) => (
              <option key={one} value={one}>
                {one}
              </option>
            ))}
          </select>
        </div>
        <button type="submit">Show</button>
      </div>
    </form>
  );
}
