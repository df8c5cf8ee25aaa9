"use client";

import { Link } from "@/app/_parts/link";
import { TableBox } from "@/app/_parts/table-box";
import { WhenOpened } from "@/app/_parts/when-opened";
import type { LeadQuarter } from "@/lib/views/lead-quarter";
import { unbroken } from "@/lib/views/unbroken";

/** What stands out among clinicians after allowing for how many are compared, and what could have been seen. */
export function BeyondChance(props: { view: LeadQuarter["chance"] }) {
  const { flags, howToLook, promise, quiet, notAssessable } = props.view;
  return (
    <>
      {flags.length === 0 ? (
        <p>No clinician&apos;s rate stands out by more than chance easily gives.</p>
      ) : (
        <>
          <ul className="notes">
            {flags.map((flag) => (
              <li key={flag.words} className="note-look">
                {unbroken(flag.words)} <Link href={flag.href}>Look closer</Link>
              </li>
            ))}
          </ul>
          <p>{howToLook}</p>
        </>
      )}
      <p className="note">{unbroken(promise)}</p>
      {notAssessable ? <p>{notAssessable}</p> : null}
      {quiet.count > 0 ? (
        <WhenOpened
          summary={`Nothing to see in ${quiet.count} figures: what could have been seen`}
          content={() => <Quiet measures={quiet.measures} />}
        />
      ) : null}
    </>
  );
}

function Quiet(props: { measures: LeadQuarter["chance"]["quiet"]["measures"] }) {
  return (
    <TableBox label="What could have been seen">
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">Measure</th>
            <th scope="col">Clinician</th>
            <th scope="col">What so many units would have shown</th>
          </tr>
        </thead>
        <tbody>
          {props.measures.flatMap(({ title, lines }) =>
            lines.map(([name, words]) => (
              <tr key={`${title} ${name}`}>
                <th scope="row">{title}</th>
                <td data-label="Clinician">{name}</td>
                <td data-label="What so many units would have shown">{words}</td>
              </tr>
            )),
          )}
        </tbody>
      </table>
    </TableBox>
  );
}
