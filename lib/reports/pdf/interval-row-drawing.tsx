import { G, Line, Path } from "@react-pdf/renderer";
import type { ChartAxis } from "@/lib/views/chart-rows";
import { onAxis } from "./axis-scale";
import { ChartMark } from "./chart-mark";
import { ChartWords, chartText } from "./chart-words";
import type { intervalLayout } from "./interval-layout";
import { colours } from "./look";

type Laid = ReturnType<typeof intervalLayout>;

/** A row: whose it is, its interval and estimate or why there is none, what the flags say, and its counts. */
export function IntervalRowDrawing(props: {
  of: Laid["rows"][number];
  laid: Laid;
  axis: ChartAxis;
  width: number;
  /** Some row has an interval that allows for patients: the plain ones are the thick ones. */
  paired: boolean;
}) {
  const { laid, axis, width, paired } = props;
  const { row, label, middle: y } = props.of;
  const { left, across } = laid;
  const baseline = y + 2.8;
  const { lower, upper, estimate, comparison, outer } = row;
  return (
    <G>
      {label.map((words, place) => (
        <ChartWords
          // biome-ignore lint/suspicious/noArrayIndexKey: lines keep their order.
          key={place}
          x={0}
          y={baseline + (place - (label.length - 1) / 2) * chartText.line}
        >
          {words}
        </ChartWords>
      ))}
      {comparison === undefined || comparison === null ? null : (
        <Line
          x1={across(comparison)}
          x2={across(comparison)}
          y1={y - 6.5}
          y2={y + 6.5}
          stroke={colours.reference}
          strokeWidth={1.75}
        />
      )}
      {estimate === null && row.missing ? (
        <ChartWords x={left + 4} y={baseline} face="slanted" colour={colours.inkSoft} halo>
          {row.missing}
        </ChartWords>
      ) : null}
      {estimate !== null && lower !== null && upper !== null ? (
        <Interval
          {...{ lower, upper, y, axis, across }}
          thickness={paired ? 2.75 : 1.25}
          ends={paired ? 0 : 2.75}
        />
      ) : null}
      {estimate !== null && outer ? (
        <Interval {...outer} {...{ y, axis, across }} thickness={0.85} ends={4} />
      ) : null}
      {estimate !== null ? <ChartMark x={across(estimate)} y={y} flag={row.flag} /> : null}
      {row.flag ? (
        <ChartWords x={laid.flagEnd} y={baseline} end="end" face="strong">
          {row.flag}
        </ChartWords>
      ) : null}
      <ChartWords x={width} y={baseline} end="end" colour={colours.inkSoft}>
        {row.counts}
      </ChartWords>
    </G>
  );
}

/** A line from end to end; an end beyond the axis has no tick. */
function Interval(props: {
  lower: number;
  upper: number;
  y: number;
  axis: ChartAxis;
  across: (value: number) => number;
  thickness: number;
  ends: number;
}) {
  const { lower, upper, y, axis, across, ends } = props;
  const ticks = ends === 0 ? [] : [lower, upper].filter((value) => onAxis(axis, value));
  return (
    <Path
      d={[
        `M${across(lower)} ${y}L${across(upper)} ${y}`,
        ...ticks.map((value) => `M${across(value)} ${y - ends}L${across(value)} ${y + ends}`),
      ].join("")}
      stroke={colours.data}
      strokeWidth={props.thickness}
      fill="none"
    />
  );
}
