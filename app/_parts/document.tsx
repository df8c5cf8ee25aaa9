import type { DocumentBlock, DocumentTable, ReportDocument } from "@/lib/views/document/document";
import { unbroken } from "@/lib/views/unbroken";
import { IntervalFigure } from "./interval-figure";
import { MonthsFigure } from "./months-figure";
import { Section } from "./section";
import { TableBox } from "./table-box";

/** A report as a page that prints: the same parts in the same order as its PDF, and the form of it that is accessible. */
export function PrintedDocument(props: { of: ReportDocument }) {
  const { facts, summary, parts } = props.of;
  return (
    <>
      <Section id="summary" title="Summary">
        <Block of={{ kind: "facts", facts }} />
        <Blocks of={summary} />
      </Section>
      {parts.map((part) => (
        <div key={part.id} className={part.wide ? "wide" : undefined}>
          <Section id={part.id} title={part.title} {...(part.note ? { note: part.note } : {})}>
            <Blocks of={part.blocks} />
          </Section>
        </div>
      ))}
    </>
  );
}

function Blocks(props: { of: readonly DocumentBlock[] }) {
  return props.of.map((block, place) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a report keep their places.
    <Block key={place} of={block} />
  ));
}

function Block(props: { of: DocumentBlock }) {
  const { of } = props;
  switch (of.kind) {
    case "words":
      return <p className={of.soft ? "soft" : undefined}>{unbroken(of.words)}</p>;
    case "heading":
      return <h3>{unbroken(of.words)}</h3>;
    case "list":
      return (
        <ul>
          {of.items.map((item) => (
            <li key={item}>{unbroken(item)}</li>
          ))}
        </ul>
      );
    case "facts":
      return (
        <dl className="facts kept-as">
          {of.facts.map((fact) => (
            <div key={fact.name} style={{ display: "contents" }}>
              <dt>{fact.name}</dt>
              <dd>{unbroken(fact.words)}</dd>
            </div>
          ))}
        </dl>
      );
    case "table":
      return <Table of={of} />;
    case "intervals":
      return <IntervalFigure chart={of.chart} />;
    case "months":
      return <MonthsFigure chart={of.chart} />;
  }
}

function Table(props: { of: DocumentTable }) {
  const { label, columns, rows } = props.of;
  return (
    <TableBox label={label}>
      <table className="fold">
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.title} scope="col" className={column.numeric ? "num" : undefined}>
                {column.title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              {columns.map((column, place) => {
                const words = unbroken(row.cells[place] ?? "");
                return place === 0 ? (
                  <th key={column.title} scope="row">
                    {words}
                  </th>
                ) : (
                  <td
                    key={column.title}
                    className={column.numeric ? "num" : undefined}
                    data-label={column.title}
                  >
                    {words}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
