import { AnsweringForm } from "@/app/_parts/answering-form";
import { TableBox } from "@/app/_parts/table-box";
import type { DifferenceLine } from "@/lib/views/correction-lines";
import { settleDifferencesAct } from "../acts";
import { FieldList } from "./field-list";

/** Newer versions beside the accepted rows; the chosen ones are taken, or let go. */
export function Differences(props: { rows: readonly DifferenceLine[] }) {
  return (
    <AnsweringForm
      act={settleDifferencesAct}
      button="Do it for the chosen rows"
      label="Settle newer versions"
      row
      fields={[
        {
          label: "Which version is to stand",
          name: "how",
          defaultValue: "",
          options: [
            { value: "", words: "Choose" },
            { value: "newer", words: "Take the newer" },
            { value: "first", words: "Keep the first, and let the newer go" },
          ],
        },
      ]}
    >
      <TableBox label="Newer versions, one by one">
        <table className="fold">
          <thead>
            <tr>
              <th scope="col">Choose</th>
              <th scope="col">Row</th>
              <th scope="col">What differs: accepted → newer</th>
              <th scope="col">Where from</th>
            </tr>
          </thead>
          <tbody>
            {props.rows.map((row) => (
              <tr key={row.id} id={`difference-${row.id}`}>
                <td>
                  <input
                    type="checkbox"
                    name="row"
                    value={row.id}
                    aria-label={`Choose ${row.row}, ${row.newerFrom}`}
                  />
                </td>
                <th scope="row">
                  {row.row} <span className="soft small">of {row.practice}</span>
                </th>
                <td data-label="What differs">
                  <div className="stack-tight">
                    <FieldList fields={row.fields} />
                    {row.kept ? <p className="small soft">{row.kept}</p> : null}
                    {row.cannot ? <p className="form-error">{row.cannot}</p> : null}
                  </div>
                </td>
                <td data-label="Where from" className="small">
                  Newer: {row.newerFrom}
                  <br />
                  Accepted: {row.firstFrom}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </AnsweringForm>
  );
}
