import { AnsweringForm } from "@/app/_parts/answering-form";
import type { OverTimeView } from "@/lib/reports/measure-over-time";
import { setRebaseAct, takeRebaseBackAct } from "../acts";

/** Where limits begin anew, by hand and with a reason; each can be taken back. */
export function Rebases(props: { view: OverTimeView; form: Readonly<Record<string, string>> }) {
  const { rebases, months } = props.view;
  return (
    <details className="not-printed" open={rebases.length > 0}>
      <summary>Let limits begin anew ({rebases.length})</summary>
      {rebases.length > 0 ? (
        <ul>
          {rebases.map((one) => (
            <li key={one.id}>
              {one.words}
              <AnsweringForm
                act={takeRebaseBackAct}
                button="Take back"
                kind="plain"
                row
                label={`Take back ${one.words}`}
                hidden={{ ...props.form, id: String(one.id) }}
              />
            </li>
          ))}
        </ul>
      ) : null}
      <p className="small">
        After a known change, as a new pump or another protocol, what came before is no measure for
        what comes after. The reason is kept and printed with the chart.
      </p>
      <AnsweringForm
        act={setRebaseAct}
        button="Begin anew"
        label="Let limits begin anew"
        hidden={props.form}
        fields={[
          { label: "From", name: "month", options: months.map((one) => ({ ...one })) },
          { label: "Reason", name: "reason", required: true, maxLength: 300 },
        ]}
      />
    </details>
  );
}
