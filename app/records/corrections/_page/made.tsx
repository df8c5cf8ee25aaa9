import { AnsweringForm } from "@/app/_parts/answering-form";
import { TableBox } from "@/app/_parts/table-box";
import type { CorrectionLine } from "@/lib/views/correction-lines";
import { takeCorrectionBackAct } from "../acts";
import { FieldList } from "./field-list";

/** The corrections made, each with who took it and a way to take it back. */
export function Made(props: { rows: readonly CorrectionLine[] }) {
  return (
    <TableBox label="Corrections made">
      <table className="fold">
        <thead>
          <tr>
            <th scope="col">Row</th>
            <th scope="col">What changed: old → newer</th>
            <th scope="col">Taken</th>
            <th scope="col">State</th>
          </tr>
        </thead>
        <tbody>
          {props.rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">
                {row.row} <span className="soft small">of {row.practice}</span>
              </th>
              <td data-label="What changed">
                <FieldList fields={row.fields} />
              </td>
              <td data-label="Taken">
                Correction {row.id}: {row.taken}
              </td>
              <td data-label="State">
                {row.takenBack ?? (
                  <AnsweringForm
                    act={takeCorrectionBackAct}
                    button="Take back"
                    kind="plain"
                    row
                    label={`Take correction ${row.id} back`}
                    hidden={{ correction: String(row.id) }}
                  />
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}
