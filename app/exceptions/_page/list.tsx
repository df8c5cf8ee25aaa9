import { Link } from "@/app/_parts/link";
import { Section } from "@/app/_parts/section";
import { TableBox } from "@/app/_parts/table-box";
import type { ExceptionsPage } from "@/lib/reports/exceptions-page";
import { Filters } from "./filters";

/** The exceptions of the period, a page of them. */
export function List(props: { of: ExceptionsPage }) {
  const { lines, words, previous, next } = props.of;
  const lead = props.of.as === "lead";
  return (
    <Section
      id="list"
      title={lead ? "Each exception" : "My exceptions"}
      note="An exception counts only where the unit is not met: a unit that is met stays met."
    >
      <Filters of={props.of} />
      <p className="small soft">{words}</p>
      {lines.length === 0 ? null : (
        <TableBox label="List of exceptions">
          <table className="fold">
            <thead>
              <tr>
                <th scope="col">Day</th>
                <th scope="col">Criterion</th>
                {lead ? <th scope="col">Clinician</th> : null}
                <th scope="col">Unit</th>
                <th scope="col">Reason</th>
                <th scope="col">Written down</th>
                <th scope="col">Question</th>
              </tr>
            </thead>
            <tbody>
              {lines.map((line) => (
                <tr key={line.id}>
                  <td className="nowrap" data-label="Day">
                    {line.day}
                  </td>
                  <th scope="row">
                    <Link href={line.href}>{line.criterion}</Link>
                  </th>
                  {lead ? <td data-label="Clinician">{line.clinician}</td> : null}
                  <td data-label="Unit">{line.unit}</td>
                  <td data-label="Reason">
                    <span className="mark mark-excepted">{line.reason}</span>
                    {line.remark ? <span className="small soft"> {line.remark}</span> : null}
                  </td>
                  <td data-label="Written down">{line.source}</td>
                  <td data-label="Question">{line.asked}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableBox>
      )}
      <nav className="row" aria-label="Pages of exceptions">
        {previous ? <Link href={previous}>← Later ones</Link> : null}
        {next ? <Link href={next}>Earlier ones →</Link> : null}
      </nav>
    </Section>
  );
}
