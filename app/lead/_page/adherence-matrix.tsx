"use client";

import { Link } from "@/app/_parts/link";
import { TableBox } from "@/app/_parts/table-box";
import type { AdherenceMatrix as Matrix, MatrixBlock } from "@/lib/views/adherence-matrix";
import { cellAddress } from "@/lib/views/cell-address";
import type { MatrixCell } from "@/lib/views/matrix-cell";
import { unbroken } from "@/lib/views/unbroken";

/** Every criterion against everybody it is of: the whole first, then a column each, in blocks that fit a sheet. */
export function AdherenceMatrix(props: { of: Matrix }) {
  const { finding, parts, notes } = props.of;
  return (
    <>
      <p className="finding">{unbroken(finding)}</p>
      {notes.map((note) => (
        <p key={note} className="small soft">
          {note}
        </p>
      ))}
      {parts.map((part) => (
        <div key={part.id} className="wide stack">
          <h3>{part.title}</h3>
          {part.blocks.map((block) => (
            <Block key={block.id} of={block} whole={part.wholeName} />
          ))}
        </div>
      ))}
    </>
  );
}

function Block(props: { of: MatrixBlock; whole: string }) {
  const { label, columns, rows } = props.of;
  return (
    <TableBox label={label}>
      <table className="matrix">
        <thead>
          <tr>
            <th scope="col">Criterion</th>
            <th scope="col">{props.whole}</th>
            {columns.map((column) => (
              <th key={column.id} scope="col">
                {column.name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.measure}>
              <th scope="row">
                <Link href={row.href}>{row.title}</Link>
                <div className="matrix-more">
                  {unbroken(row.target)}
                  {row.changed ? `, ${row.changed}` : null}
                </div>
              </th>
              <Cell of={row.whole} href={cellAddress(row, { asks: "" }, row.whole ?? {})} whole />
              {columns.map((column, place) => {
                const cell = row.cells[place] ?? null;
                return (
                  <Cell key={column.id} of={cell} href={cellAddress(row, column, cell ?? {})} />
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

function Cell(props: { of: MatrixCell; href: string; whole?: boolean }) {
  const { of, href } = props;
  const name = props.whole ? "matrix-whole" : undefined;
  if (!of)
    return (
      <td className={name}>
        <span className="missing matrix-more">no units</span>
      </td>
    );
  const { rate, counts, state, flag } = of;
  const mark = state ? <span className={`mark mark-${state.mark}`}>{state.words}</span> : null;
  if (!rate)
    return (
      <td className={name}>
        <Link href={href} className="matrix-more">
          {mark}
        </Link>
      </td>
    );
  return (
    <td className={name}>
      <Link href={href}>{unbroken(rate)}</Link>
      <div className="matrix-more">{unbroken(counts)}</div>
      {mark ? <div className="matrix-more">{mark}</div> : null}
      {flag ? <span className="tag">{flag}</span> : null}
    </td>
  );
}
