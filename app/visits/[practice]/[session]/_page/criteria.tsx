import { Link } from "@/app/_parts/link";
import { TableBox } from "@/app/_parts/table-box";
import type { VisitCriterion } from "@/lib/views/visit-criteria";

/** Every criterion at the visit with the evidence for what became of it. */
export function Criteria(props: { of: readonly VisitCriterion[] }) {
  return (
    <TableBox label="Criteria at this visit">
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">Criterion</th>
            <th scope="col">Unit</th>
            <th scope="col">State</th>
            <th scope="col">In the records</th>
          </tr>
        </thead>
        {props.of.map((one) => (
          <tbody key={one.id}>
            {one.none ? (
              <tr>
                <th scope="row">
                  <Name of={one} />
                </th>
                <td colSpan={3} className="soft">
                  {one.none}
                </td>
              </tr>
            ) : null}
            {one.units.map((unit, place) => (
              <tr key={unit.id}>
                {place === 0 ? (
                  <th scope="rowgroup" rowSpan={one.units.length}>
                    <Name of={one} />
                  </th>
                ) : null}
                <td>{unit.unit}</td>
                <td>
                  <Link href={unit.why} className={`mark mark-${unit.mark}`}>
                    {unit.state}
                  </Link>
                  {unit.exception ? (
                    <Link className="small" href={unit.exception} style={{ display: "block" }}>
                      Exception
                    </Link>
                  ) : null}
                </td>
                <td>{unit.evidence}</td>
              </tr>
            ))}
          </tbody>
        ))}
      </table>
    </TableBox>
  );
}

function Name(props: { of: VisitCriterion }) {
  return (
    <>
      {props.of.title}
      <span className="small soft" style={{ display: "block", fontWeight: 400, maxWidth: "22rem" }}>
        {props.of.statement}
      </span>
    </>
  );
}
