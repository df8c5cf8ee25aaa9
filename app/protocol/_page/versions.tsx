import type { CriterionPage } from "@/lib/reports/protocol/criterion-page";
import { AnsweringForm } from "../../_parts/answering-form";
import { withdrawVersionAct } from "../acts";

/** The versions of a criterion in a practice: what they demand, from when, who wrote them and why. */
export function Versions(props: { page: CriterionPage }) {
  const { versions, withdrawn, practice, mayChange, atFirst } = props.page;
  return (
    <>
      {versions.length === 0 ? (
        <p>As every practice begins: nothing has been changed here.</p>
      ) : (
        <ol className="protocol-versions">
          {versions.map((version) => (
            <li key={version.id}>
              <h3>
                From {version.from} <span className="tag">{version.state}</span>
              </h3>
              <p>
                {version.reason} <span className="soft">({version.by})</span>
              </p>
              {version.demands === null ? (
                <p>Out of force from that day on.</p>
              ) : (
                <details>
                  <summary>
                    What it demands<span className="only-heard"> from {version.from}</span>
                  </summary>
                  <p>{version.demands}</p>
                </details>
              )}
              {version.mayWithdraw && mayChange ? (
                <AnsweringForm
                  act={withdrawVersionAct}
                  button="Withdraw"
                  kind="plain"
                  row
                  label={`Withdraw the version from ${version.from}`}
                  hidden={{ practice: practice.code, version: String(version.id) }}
                />
              ) : null}
            </li>
          ))}
          {atFirst ? (
            <li>
              <h3>
                From the beginning <span className="tag">before</span>
              </h3>
              <p>
                As every practice begins{atFirst.inForce ? "" : "; not in force until asked for"}.
              </p>
              <details>
                <summary>
                  What it demanded<span className="only-heard"> at the beginning</span>
                </summary>
                <p>{atFirst.demands}</p>
              </details>
            </li>
          ) : null}
        </ol>
      )}
      {withdrawn.length > 0 ? (
        <details>
          <summary>Withdrawn before they began ({withdrawn.length})</summary>
          <ul>
            {withdrawn.map(({ id, words }) => (
              <li key={id}>{words}</li>
            ))}
          </ul>
        </details>
      ) : null}
    </>
  );
}
