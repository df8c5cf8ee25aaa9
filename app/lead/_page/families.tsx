import { Definition } from "@/app/_parts/definition";
import { IntervalFigure } from "@/app/_parts/interval-figure";
import { Link } from "@/app/_parts/link";
import type { Family } from "@/lib/views/lead-family";

/** Measures across clinicians, each with its definition and its own page. */
export function Families(props: { families: readonly Family[] }) {
  return (
    <div className="charts">
      {props.families.map((family) => (
        <div key={family.measure} className="stack-tight">
          <h3>
            <Link href={family.href}>{family.title}</Link>
          </h3>
          <Definition of={family.title}>
            <p>{family.definition}</p>
          </Definition>
          {family.span ? (
            <p className="small note">
              {family.span.words} <Link href={family.span.href}>The quarter by itself</Link>
            </p>
          ) : null}
          <IntervalFigure chart={family.chart} />
        </div>
      ))}
    </div>
  );
}
