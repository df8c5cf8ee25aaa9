import type { CriterionPage } from "@/lib/reports/protocol/criterion-page";

/** Everything that a criterion states, in words. */
export function Stated(props: { page: CriterionPage }) {
  const { words, rationale, source, targetSource } = props.page;
  return (
    <dl className="facts protocol-facts">
      <dt>Why</dt>
      <dd>{rationale}</dd>
      <dt>Source</dt>
      <dd>{source}</dd>
      <dt>Counts</dt>
      <dd>{words.population}</dd>
      <dt>Left out first</dt>
      <dd>
        {words.leftOut.length === 0 ? (
          "Nothing."
        ) : (
          <ul>
            {words.leftOut.map((one) => (
              <li key={`${one.reason} ${one.words}`}>
                {one.words} <span className="soft">(counted as: {one.reason})</span>
              </li>
            ))}
          </ul>
        )}
      </dd>
      <dt>Met if</dt>
      <dd>{words.met}</dd>
      <dt>Excepted</dt>
      <dd>
        {words.exceptions === null ? (
          "No exception is foreseen."
        ) : words.exceptions.length === 0 ? (
          "For any coded reason."
        ) : (
          <ul>
            {words.exceptions.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        )}
      </dd>
      <dt>Needs as evidence</dt>
      <dd>
        <ul>
          {words.evidence.map((one) => (
            <li key={one}>{one}</li>
          ))}
        </ul>
        {words.unrecorded}
      </dd>
      <dt>Target</dt>
      <dd>
        {words.target}. {targetSource}
      </dd>
      <dt>Completeness</dt>
      <dd>{words.floor}</dd>
      <dt>Shown</dt>
      <dd>{words.shown}</dd>
    </dl>
  );
}
