import { Link } from "@/app/_parts/link";
import { Section } from "@/app/_parts/section";
import { TableBox } from "@/app/_parts/table-box";
import { UnitState } from "@/app/_parts/unit-state";
import type { MeasureRecords } from "@/lib/reports/measure-records";
import { RecordsChoice } from "./records-choice";

/** The records behind any point: a page of units, each leading to its visit. */
export function RecordsBehind(props: {
  path: string;
  records: MeasureRecords;
  keep: Readonly<Record<string, string | undefined>>;
}) {
  const { records } = props;
  return (
    <Section id="records" title="The records behind it" note={records.words}>
      <RecordsChoice path={props.path} records={records} keep={props.keep} />
      {records.lines.length > 0 ? (
        <TableBox label="List of the records">
          <table className="fold">
            <thead>
              <tr>
                <th scope="col">Day</th>
                <th scope="col">Clinician, chair</th>
                <th scope="col">Unit</th>
                <th scope="col">Outcome</th>
              </tr>
            </thead>
            <tbody>
              {records.lines.map((line) => (
                <tr key={line.id}>
                  <th scope="row">
                    {line.href ? <Link href={line.href}>{line.day}</Link> : line.day}
                  </th>
                  <td data-label="Clinician, chair">{line.whose}</td>
                  <td data-label="Unit">{line.what}</td>
                  <td data-label="Outcome">
                    <UnitState of={line} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableBox>
      ) : null}
      <nav className="row" aria-label="Pages of records">
        {records.previous ? <Link href={records.previous}>← Later ones</Link> : null}
        {records.next ? <Link href={records.next}>Earlier ones →</Link> : null}
      </nav>
    </Section>
  );
}
