import { TableBox } from "@/app/_parts/table-box";
import type { ClauseLine, ItemTable } from "@/lib/views/clause-line";

/** A clause with what was found and where, and the clauses that it is made of. */
export function Clause(props: { of: ClauseLine }) {
  const { of } = props;
  return (
    <div className="clause">
      <p>
        <span className={`mark mark-${of.mark}`}>{of.state}:</span> {of.words}
      </p>
      {of.found ? (
        <p className="small">
          Found: <strong>{of.found}</strong>
          {of.sources.length > 0 ? <span className="soft"> ({of.sources.join("; ")})</span> : null}
        </p>
      ) : null}
      {of.items ? (
        <>
          <p className="small soft">{of.items.label}</p>
          <Items of={of.items} />
        </>
      ) : null}
      {of.parts.map((part) => (
        <Clause key={part.words} of={part} />
      ))}
    </div>
  );
}

function Items(props: { of: ItemTable }) {
  const { of } = props;
  const sourced = of.rows.some((row) => row.source !== "");
  if (of.rows.length === 0) return <p className="small soft">There is none.</p>;
  return (
    <TableBox label={of.label}>
      <table className="fold">
        <thead>
          <tr>
            {sourced ? <th scope="col">Asked for</th> : null}
            {of.head.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
            {sourced ? <th scope="col">From</th> : null}
          </tr>
        </thead>
        <tbody>
          {of.rows.map((row) => (
            <tr key={row.id}>
              {sourced ? <td data-label="Asked for">{row.asked}</td> : null}
              {row.cells.map((cell, place) => (
                <td key={of.head[place]} data-label={of.head[place]}>
                  {cell}
                </td>
              ))}
              {sourced ? <td data-label="From">{row.source}</td> : null}
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
