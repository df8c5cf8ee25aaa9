import type { ChartAxis } from "@/lib/views/chart-rows";
import type { Lane, LineRow, Stretch, TimeLine } from "@/lib/views/visit-time-line";
import look from "./lanes.module.css";

/** The canals of a visit one under the other on a common scale of time. The words say all; the stretches only place it. */
export function Lanes(props: { of: TimeLine }) {
  const { axis, lanes, note } = props.of;
  return (
    <div className="stack-tight">
      <p className="small soft">{note}</p>
      {lanes.map((lane) => (
        <LaneOf key={lane.canal} lane={lane} axis={axis} />
      ))}
    </div>
  );
}

function LaneOf(props: { lane: Lane; axis: ChartAxis }) {
  const { lane, axis } = props;
  return (
    <article className={look.lane}>
      <div className={look.row}>
        <div>
          <h3>{lane.title}</h3>
          <p className="small soft">{lane.facts}</p>
        </div>
        {lane.rows.length > 0 ? <Scale axis={axis} /> : null}
      </div>
      {lane.rows.length === 0 ? (
        <p className="missing">No delivery and no preparation recorded.</p>
      ) : null}
      {lane.rows.map((row) => (
        <Line key={row.id} row={row} axis={axis} />
      ))}
      <ul className={look.uses} aria-label={`Instruments, ${lane.title}`}>
        {lane.uses.map((use) => (
          <li key={use.id}>
            {use.separated ? <span className="mark mark-missed">{use.words}</span> : use.words}
          </li>
        ))}
      </ul>
    </article>
  );
}

function Scale(props: { axis: ChartAxis }) {
  return (
    <div className={look.scale} aria-hidden="true">
      {props.axis.ticks.map((tick) => (
        <span
          key={tick.value}
          className={look.tick}
          style={{ left: share(tick.value, props.axis) }}
        >
          {tick.words}
        </span>
      ))}
    </div>
  );
}

function Line(props: { row: LineRow; axis: ChartAxis }) {
  const { row, axis } = props;
  return (
    <div className={look.row}>
      <span className="small">{row.words}</span>
      <div className={look.line} aria-hidden="true">
        <div className={look.track}>
          {row.stretches.map((one) => (
            <span
              key={one.kind}
              className={stretchLook(one)}
              style={{ left: share(one.from, axis), width: share(one.seconds, axis) }}
            />
          ))}
          {row.at === null ? null : (
            <span className={look.unknown} style={{ left: share(row.at, axis) }} />
          )}
        </div>
      </div>
    </div>
  );
}

function stretchLook(one: Stretch): string {
  const fill = one.irrigant === null ? look.preparation : (look[one.irrigant] ?? look.other);
  return [look.stretch, fill, one.kind === "dwell" ? look.dwell : ""].join(" ");
}

function share(value: number, axis: ChartAxis): string {
  return `${(value / axis.max) * 100}%`;
}
