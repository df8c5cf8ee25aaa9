import { TableBox } from "@/app/_parts/table-box";
import type { PreviewTable } from "@/lib/views/mapping/preview-view";

/** The first rows of a table as they would be brought in, and why some would be held. */
export function PreviewRows(props: { heading: string; preview: PreviewTable }) {
  const { preview, heading } = props;
  return (
    <details className="mapping-preview" open>
      <summary>
        {heading} from the first rows of the file: {preview.made} made, {preview.held} of them would
        be held
        {preview.none === "0" ? "" : `; ${preview.none} rows feed none`}
      </summary>
      {preview.rows.length === 0 ? (
        <p className="missing">None of the first rows makes one.</p>
      ) : (
        <TableBox label={`${heading} from the first rows of the file`}>
          <table className="fold">
            <thead>
              <tr>
                <th scope="col">Line</th>
                {preview.fields.map((field) => (
                  <th key={field.value} scope="col">
                    {field.words}
                  </th>
                ))}
                <th scope="col">Would be</th>
              </tr>
            </thead>
            <tbody>
              {preview.rows.map((row) => (
                <tr key={row.lines}>
                  <th scope="row" className="nowrap">
                    {row.lines}
                  </th>
                  {row.cells.map((cell, place) => (
                    <td
                      key={preview.fields[place]?.value}
                      data-label={preview.fields[place]?.words}
                    >
                      {cell}
                    </td>
                  ))}
                  <td data-label="Would be">
                    {row.held.length === 0 ? (
                      "right"
                    ) : (
                      <>
                        <strong>held.</strong>{" "}
                        {row.held.map(({ field, says }) => `${field}: ${says}`).join("; ")}
                      </>
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </TableBox>
      )}
    </details>
  );
}
