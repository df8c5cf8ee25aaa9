import { TableBox } from "@/app/_parts/table-box";
import type { ClauseLine, ItemTable } from "@/lib/views/clause-line";

/** A clause with what was found and where, and the clauses that it is made of. */
export function Clause(props: { of: ClauseLine }) {
  const { of } = props;
  return (
    <div className="clause">
      <p>
        <span className={`mark mark-${of.mark}`}>{of.state}</span> {of.words}
      </p>
      {of.found ? (
        <p className="small">
          Found: <strong>{of.found}</strong>
          {of.sources.length > 0 ? <span className="soft"> ({of.sources.join("; ")})</span> : null}
        </p>
      ) : null}
      {of.items ? <Items of={of.items} /> : null}
      {of.parts.map((part) => (
        <Clause key={part.words} of={part} />
      ))}
    </div>
  );
}

function Items(props: { of: ItemTable }) {
  const { of } = props;
  if (of.rows.length === 0) return <p className="small soft">There is none.</p>;
  return (
    <TableBox label={of.label}>
      <table className="fold">
        <caption className="small">{of.label}</caption>
        <thead>
          <tr>
            <th scope="col">Asked for</th>
            {of.head.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
            <th scope="col">From</th>
          </tr>
        </thead>
        <tbody>
          {of.rows.map((row) => (
            <tr key={row.id}>
              <td data-label="Asked for">{row.asked}</td>
              {row.cells.map((cell, place) => (
                <td key={of.head[place]} data-label={of.head[place]}>
                  {cell}
                </td>
              ))}
              <td data-label="From">{row.source}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
