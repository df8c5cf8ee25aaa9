import { Section } from "@/app/_parts/section";
import { TableBox } from "@/app/_parts/table-box";
import type { ExceptionRates } from "@/lib/views/exception-rates";
import { unbroken } from "@/lib/views/unbroken";

/** How often each clinician's units are excepted, beside the practice without them. */
export function Rates(props: { of: ExceptionRates }) {
  const { rows, findings, note } = props.of;
  return (
    <Section id="rates" title="By clinician" note={note}>
      <ul className="notes">
        {findings.map((one) => (
          <li key={one.id} className={one.look ? "note-look" : undefined}>
            {unbroken(one.words)}
          </li>
        ))}
      </ul>
      {rows.length === 0 ? null : (
        <TableBox label="Share of exceptions by criterion and clinician">
          <table className="fold">
            <thead>
              <tr>
                <th scope="col">Clinician</th>
                <th scope="col">Criterion</th>
                <th scope="col" className="num">
                  Excepted
                </th>
                <th scope="col" className="num">
                  Eligible
                </th>
                <th scope="col" className="num">
                  Share
                </th>
                <th scope="col">95 % interval</th>
                <th scope="col">Practice without them</th>
                <th scope="col">Compared</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={row.id}>
                  <th scope="row">
                    {row.clinician} <span className="soft">of {row.practice}</span>
                  </th>
                  <td data-label="Criterion">{row.criterion}</td>
                  <td className="num" data-label="Excepted">
                    {row.excepted}
                  </td>
                  <td className="num" data-label="Eligible">
                    {row.eligible}
                  </td>
                  <td className="num" data-label="Share">
                    {row.share}
                  </td>
                  <td className="nowrap" data-label="95 % interval">
                    {row.interval}
                  </td>
                  <td data-label="Practice without them">{row.others}</td>
                  <td data-label="Compared">{row.comparison}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableBox>
      )}
    </Section>
  );
}
