import { recordFormat } from "@/lib/reports/record-format";
import { currentViewer } from "@/lib/reports/viewer";
import { PageHead } from "../../_parts/page-head";
import { Section } from "../../_parts/section";
import { within } from "../../_parts/within";
import { ColumnTable } from "./column-table";

export const metadata = { title: "Record format" };

export default async function FormatPage() {
  const tables = await within("/records/format", async () => recordFormat(await currentViewer()));
  return (
    <>
      <PageHead
        title="Record format"
        lead="Ten tables describe visits, what was used in them and the upkeep of the equipment. A file holds one table; its name or its header row says which."
      />
      <nav aria-label="Tables" className="row not-printed picker">
        {tables.map((table) => (
          <a key={table.name} href={`#${table.name}`}>
            {table.name}
          </a>
        ))}
      </nav>
      <p className="note">
        An empty cell means “not recorded”, which is never “no” and never 0. Units are fixed by the
        column's name. Columns that are not listed here are not kept. In an XLSX workbook each sheet
        is a table; JSON holds an array, NDJSON a row a line.
      </p>
      {tables.map((table) => (
        <Section
          key={table.name}
          id={table.name}
          title={table.name}
          note={
            <>
              {table.says}
              {table.parent ? ` Belongs to a row of ${table.parent}, which may come later.` : ""}
            </>
          }
        >
          <ul className="legend not-printed">
            {table.files.map((file) => (
              <li key={file.address}>
                <a href={file.address} download>
                  {file.words}
                  <span className="only-heard"> of {table.name}</span>
                </a>
              </li>
            ))}
          </ul>
          <ColumnTable of={table} />
        </Section>
      ))}
    </>
  );
}
