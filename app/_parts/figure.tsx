import type { FigureRow } from "@/lib/views/figure-row";

/** One figure: what it is, its estimate, never without its interval and counts. */
export function Figure(props: { row: FigureRow; is: string }) {
  const { row } = props;
  return (
    <div className="figure">
      <span className="counts">{props.is}</span>
      <span className={row.missing ? "estimate missing" : "estimate"}>{row.estimate}</span>
      <span className="interval">95 % interval: {row.interval}</span>
      {row.read ? <span className="interval">{row.read}</span> : null}
      <span className="counts">
        {row.name}, {row.counts}, not recorded: {row.notRecorded}
      </span>
    </div>
  );
}
