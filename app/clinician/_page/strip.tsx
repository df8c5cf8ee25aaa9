import { Definition } from "@/app/_parts/definition";
import { IntervalFigure } from "@/app/_parts/interval-figure";
import { SpreadFigure } from "@/app/_parts/spread-figure";
import type { OwnStrip } from "@/lib/views/own-strip";
import { unbroken } from "@/lib/views/unbroken";

/** One measure: what it comes to in words at the left, how the units are spread at the right. */
export function Strip(props: { of: OwnStrip }) {
  const { of } = props;
  return (
    <article className="strip" id={of.measure}>
      <div className="stack-tight">
        <h3>{of.title}</h3>
        <div className="figure">
          {of.estimate === null ? (
            <span className="missing">no estimate</span>
          ) : (
            <span className="estimate">{of.estimate}</span>
          )}
          {of.estimate === null ? null : <span className="interval">{of.interval}</span>}
          <span className="counts">{of.counts}</span>
        </div>
        {of.read ? <p className="small soft">{unbroken(of.read)}</p> : null}
        <Definition of={of.title}>
          <p>{of.about.definition}</p>
          <p>{of.about.population}</p>
          <p>{of.about.source}</p>
        </Definition>
      </div>
      <div className="stack-tight">
        <p className="finding">{unbroken(of.finding)}</p>
        {of.comparison ? <p>{unbroken(of.comparison)}</p> : null}
        {of.notes.map((note) => (
          <p key={note} className="note">
            {unbroken(note)}
          </p>
        ))}
        {of.spread ? <SpreadFigure row={of.spread} /> : null}
        {of.plot ? <IntervalFigure chart={of.plot} /> : null}
      </div>
    </article>
  );
}
