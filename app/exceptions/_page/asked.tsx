import type { QueryLine } from "@/lib/views/exception-queries";

/** What was asked about an exception, answered and closed. */
export function Asked(props: { of: QueryLine }) {
  return (
    <dl className="facts">
      {props.of.says.map((one) => (
        <div key={one.term} className="fact">
          <dt>{one.term}</dt>
          <dd>
            {one.words} <span className="small soft">({one.who})</span>
          </dd>
        </div>
      ))}
    </dl>
  );
}
