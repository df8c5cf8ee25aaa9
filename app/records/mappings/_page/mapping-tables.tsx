import type { MappingView } from "@/lib/views/mapping/mapping-lines";
import { TableBox } from "../../../_parts/table-box";

/** What a mapping feeds, table by table, in words. */
export function MappingTables(props: { tables: MappingView["tables"] }) {
  return (
    <>
      {props.tables.map((table) => (
        <div key={table.id} className="stack-tight">
          <h3>{table.heading}</h3>
          {table.only.map((condition) => (
            <p key={condition}>{condition}.</p>
          ))}
          <TableBox label={`What feeds ${table.heading.toLowerCase()}`}>
            <table className="fold">
              <thead>
                <tr>
                  <th scope="col">Field</th>
                  <th scope="col">Fed by</th>
                  <th scope="col">Words</th>
                </tr>
              </thead>
              <tbody>
                {table.fields.map((field) => (
                  <tr key={field.name}>
                    <th scope="row">{field.words}</th>
                    <td data-label="Fed by">{field.fedBy}</td>
                    <td data-label="Words">{field.meanings.join(". ")}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </TableBox>
        </div>
      ))}
    </>
  );
}
