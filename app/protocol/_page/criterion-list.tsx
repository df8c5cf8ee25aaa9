import { Link } from "@/app/_parts/link";
import { criterionAddress } from "@/lib/views/protocol/criterion-address";
import type { ProtocolLine } from "@/lib/views/protocol/protocol-view";
import { TableBox } from "../../_parts/table-box";

/** Criteria with what they demand, their target, and since when. */
export function CriterionList(props: {
  label: string;
  lines: readonly ProtocolLine[];
  practice: string;
}) {
  return (
    <TableBox label={props.label}>
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">Criterion</th>
            <th scope="col">Counts</th>
            <th scope="col" className="num">
              Target
            </th>
            <th scope="col">In force</th>
          </tr>
        </thead>
        <tbody>
          {props.lines.map((line) => (
            <tr key={line.id}>
              <th scope="row">
                <Link href={criterionAddress(line.id, props.practice)}>{line.title}</Link>
                <p className="protocol-statement">{line.statement}</p>
              </th>
              <td data-label="Counts">{line.counts}</td>
              <td data-label="Target" className="num">
                {line.target}
              </td>
              <td data-label="In force">
                {line.standing}
                {line.next ? <p>{line.next}</p> : null}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
