import { Fragment } from "react";
import { Definition } from "@/app/_parts/definition";
import { Link } from "@/app/_parts/link";
import { TableBox } from "@/app/_parts/table-box";
import { VerdictMark } from "@/app/_parts/verdict-mark";
import type { OwnCriterionPage } from "@/lib/reports/own-criteria";
import { unbroken } from "@/lib/views/unbroken";

/** One criterion: counts, two verdicts, the units that missed it and what to do about them. */
export function CriterionStrip(props: { of: OwnCriterionPage; period: string }) {
  const { of } = props;
  return (
    <article className="strip" id={`criterion-${of.id}`}>
      <div className="stack-tight">
        <h3>{of.title}</h3>
        <p className="small soft">{of.target}</p>
        <Definition of={of.title}>
          <p>{of.definition}</p>
        </Definition>
      </div>
      <div className="stack-tight">
        <p className="finding">{of.finding}</p>
        <p>
          {unbroken(of.interval)}. {unbroken(of.read)}
        </p>
        {of.comparison ? <p>{unbroken(of.comparison)}</p> : null}
        {of.seen ? <p className="note">{unbroken(of.seen)}</p> : null}
        {of.note ? <p className="note">{of.note}</p> : null}
        <p className="row">
          {of.counts.map((one) => (
            <span key={one.mark} className={`mark mark-${one.mark}`}>
              {one.words}
            </span>
          ))}
        </p>
        <p className="small soft">{of.leftOut}</p>
        <dl className="facts">
          {of.verdicts.map((one) => (
            <Fragment key={one.about}>
              <dt>{one.about}</dt>
              <dd>
                <VerdictMark of={one.verdict} />
              </dd>
            </Fragment>
          ))}
        </dl>
        {of.misses.length > 0 ? <Misses of={of} period={props.period} /> : null}
      </div>
    </article>
  );
}

function Misses(props: { of: OwnCriterionPage; period: string }) {
  const { of } = props;
  const address = (page: number) =>
    `/clinician?${new URLSearchParams({ period: props.period, missed: of.id, at: String(page) })}#criterion-${of.id}`;
  return (
    <div className="stack-tight">
      <h4>What to do about those that missed it</h4>
      <ul className="notes">
        {of.whatToDo.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <TableBox label={`${of.title}: units that missed it`}>
        <table className="fold">
          <thead>
            <tr>
              <th scope="col">Day</th>
              <th scope="col">Unit</th>
              <th scope="col">State</th>
              <th scope="col">In the records</th>
            </tr>
          </thead>
          <tbody>
            {of.misses.map((miss) => (
              <tr key={miss.id}>
                <td className="nowrap">{miss.day}</td>
                <td>
                  <Link href={miss.href}>{miss.unit}</Link>
                </td>
                <td className="nowrap">
                  <Link href={miss.why} className={`mark mark-${miss.mark}`}>
                    {miss.state}
                  </Link>
                </td>
                <td>{miss.evidence}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
      <p className="small">
        <Link href={`/units/criterion/${of.id}?${new URLSearchParams({ period: props.period })}`}>
          All your units of it, by outcome
        </Link>
      </p>
      {of.pages > 1 ? (
        <nav className="row" aria-label={`${of.title}: pages of the list`}>
          {of.page > 1 ? <Link href={address(of.page - 1)}>← before</Link> : null}
          <span className="small soft">
            Page {of.page} of {of.pages}
          </span>
          {of.page < of.pages ? <Link href={address(of.page + 1)}>next →</Link> : null}
        </nav>
      ) : null}
    </div>
  );
}
