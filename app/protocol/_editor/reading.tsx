"use client";

import { Link } from "@/app/_parts/link";
import type { Counts } from "./use-counts";

/** How the criterion reads, and what it would have done to the last quarter: beside what is edited. */
export function Reading(props: { sentence: string; counted: string | null; counts: Counts }) {
  const { view, wrong, waiting } = props.counts;
  return (
    <aside className="editor-reading stack-tight" aria-label="How it reads, and what it would do">
      <h2>Reads as</h2>
      <p className="note" id="reads-as">
        {props.sentence}
      </p>
      <h2 id="would-have-done">What it would have done</h2>
      {props.counted === null ? (
        <p>There are no records yet that could be counted.</p>
      ) : (
        <div aria-live="polite" className="stack-tight">
          {wrong.length > 0 ? (
            <p className="hint">Not counted yet: {wrong.join(" ")}</p>
          ) : waiting ? (
            <p className="hint">Counting {props.counted} …</p>
          ) : null}
          {view && wrong.length === 0 ? <p className="note note-look">{view.finding}</p> : null}
        </div>
      )}
      {view && wrong.length === 0 ? <CountTable view={view} stale={waiting} /> : null}
      {props.counted === null ? null : <Strip counts={props.counts} />}
    </aside>
  );
}

/** The count in a line at the foot of a narrow screen, where the rest of it is far from what is edited. */
function Strip(props: { counts: Counts }) {
  const { view, wrong, waiting } = props.counts;
  const says = wrong.length > 0 ? "Not counted yet" : view ? view.short : "Counting …";
  return (
    <a
      href="#would-have-done"
      className={waiting ? "editor-strip editor-stale-strip" : "editor-strip"}
    >
      {says}
    </a>
  );
}

function CountTable(props: { view: NonNullable<Counts["view"]>; stale: boolean }) {
  const { view } = props;
  return (
    <div className={props.stale ? "editor-stale stack-tight" : "stack-tight"}>
      <table>
        <thead>
          <tr>
            <th scope="col">
              <span className="only-heard">Count</span>
            </th>
            <th scope="col" className="num">
              As edited
            </th>
            {view.beside ? (
              <th scope="col" className="num">
                As in force
              </th>
            ) : null}
          </tr>
        </thead>
        <tbody>
          {view.rows.map((row) => (
            <tr key={row.words}>
              <th scope="row">{row.words}</th>
              <td className="num">{row.proposed}</td>
              {view.beside ? <td className="num">{row.now}</td> : null}
            </tr>
          ))}
        </tbody>
      </table>
      {view.examples.length > 0 ? <h3>Examples</h3> : null}
      {view.examples.map((group) => (
        <div key={group.outcome}>
          <p>
            <span className={`mark mark-${group.mark}`}>{group.outcome}</span>
          </p>
          <ul className="small">
            {group.items.map(({ words, address }) => (
              <li key={`${words} ${address}`}>
                {address ? (
                  <Link href={address} target="_blank">
                    {words}
                    <span className="only-heard"> (opens beside)</span>
                  </Link>
                ) : (
                  words
                )}
              </li>
            ))}
          </ul>
        </div>
      ))}
      <p className="hint">
        What is not recorded is among those counted, apart from what was not met. The links open
        what was recorded, and how the version in force judges it.
      </p>
    </div>
  );
}
