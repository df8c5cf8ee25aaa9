import { ControlFigure } from "@/app/_parts/control-figure";
import { CusumFigure } from "@/app/_parts/cusum-figure";
import { FigureTable } from "@/app/_parts/figure-table";
import { Section } from "@/app/_parts/section";
import type { OverTimeView } from "@/lib/reports/measure-over-time";
import { Rebases } from "./rebases";
import { WhosePicker } from "./whose-picker";

/** The measure over time for the one chosen, signals, rebases, the running sum; quarters as a table. */
export function OverTime(props: {
  path: string;
  view: OverTimeView;
  keep: Readonly<Record<string, string | undefined>>;
  form: Readonly<Record<string, string>>;
}) {
  const { view } = props;
  return (
    <Section
      id="time"
      title="Over time"
      note="Two years up to the end of the period. Signals are a prompt to look for what changed."
    >
      <WhosePicker path={props.path} asked={view.asked} keep={props.keep} />
      {view.chart ? (
        <>
          <ControlFigure chart={view.chart} />
          <Rebases view={view} form={props.form} />
        </>
      ) : (
        <p className="missing">
          An instrument passes through months and hands, so there is no line over time.
        </p>
      )}
      {view.cusum ? <CusumFigure chart={view.cusum} /> : null}
      {view.cusumWords ? <p className="note">{view.cusumWords}</p> : null}
      <h3>Quarter against quarter</h3>
      {view.changes.length > 0 ? (
        <ul>
          {view.changes.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      ) : null}
      {view.quarters.length > 0 ? (
        <FigureTable label="By quarter" first="Quarter" rows={view.quarters} />
      ) : (
        <p className="missing">No units in these quarters.</p>
      )}
    </Section>
  );
}
