import { Circle, G, Line, Path, Svg } from "@react-pdf/renderer";
import type { MonthsChart } from "@/lib/views/chart-rows";
import { freeOfEachOther, onAxis } from "./axis-scale";
import { ChartWords, chartText } from "./chart-words";
import { widthOf } from "./font";
import { colours } from "./look";
import { monthsHeight, monthsLayout, unbrokenRuns } from "./months-layout";

type Laid = ReturnType<typeof monthsLayout>;

/** A line with whiskers for the intervals and gaps for months without units. */
export function MonthsDrawing(props: { chart: MonthsChart; width: number }) {
  const { chart, width } = props;
  const laid = monthsLayout(chart, width);
  return (
    <Svg width={width} height={monthsHeight} viewBox={`0 0 ${width} ${monthsHeight}`}>
      <Axes chart={chart} laid={laid} />
      <References laid={laid} />
      {unbrokenRuns(chart.rows).map((run) => (
        <Path
          key={run[0]?.place}
          d={run
            .map(
              ({ place, estimate }, step) =>
                `${step === 0 ? "M" : "L"}${laid.middleOf(place)} ${laid.up(estimate)}`,
            )
            .join("")}
          stroke={colours.data}
          strokeWidth={1.25}
          fill="none"
        />
      ))}
      {chart.rows.map((row, place) => (
        <Point key={row.id} row={row} x={laid.middleOf(place)} axis={chart.axis} up={laid.up} />
      ))}
    </Svg>
  );
}

function Axes(props: { chart: MonthsChart; laid: Laid }) {
  const { left, right, bottom, up, middleOf } = props.laid;
  const { axis, rows } = props.chart;
  const months = rows.flatMap(({ id, label }, place) =>
    label === ""
      ? []
      : [{ id, label, middle: middleOf(place), width: widthOf(label, chartText.size) }],
  );
  return (
    <G>
      <ChartWords x={0} y={8} colour={colours.inkSoft}>
        {axis.title}
      </ChartWords>
      {axis.ticks.map((tick) => (
        <G key={tick.value}>
          <Line
            x1={left}
            x2={right}
            y1={up(tick.value)}
            y2={up(tick.value)}
            stroke={colours.rule}
            strokeWidth={0.5}
          />
          <ChartWords x={left - 5} y={up(tick.value) + 2.8} end="end" colour={colours.inkSoft}>
            {tick.words}
          </ChartWords>
        </G>
      ))}
      <Line
        x1={left}
        x2={right}
        y1={bottom}
        y2={bottom}
        stroke={colours.ruleStrong}
        strokeWidth={0.75}
      />
      {freeOfEachOther(months, 5).map((month) => (
        <G key={month.id}>
          <Line
            x1={month.middle}
            x2={month.middle}
            y1={bottom}
            y2={bottom + 3}
            stroke={colours.ruleStrong}
            strokeWidth={0.75}
          />
          <ChartWords x={month.middle} y={bottom + 12} end="middle" colour={colours.inkSoft}>
            {month.label}
          </ChartWords>
        </G>
      ))}
    </G>
  );
}

function References(props: { laid: Laid }) {
  const { left, right, references } = props.laid;
  return (
    <G>
      {references.map((one, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: references keep their order.
        <G key={place}>
          <Line
            x1={left}
            x2={right + 4}
            y1={one.y}
            y2={one.y}
            stroke={colours.reference}
            strokeWidth={1}
            strokeDasharray="3 2.5"
          />
          {one.lines.map((words, down) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: lines keep their order.
            <ChartWords key={down} x={right + 7} y={one.first + down * chartText.line}>
              {words}
            </ChartWords>
          ))}
        </G>
      ))}
    </G>
  );
}

function Point(props: {
  row: MonthsChart["rows"][number];
  x: number;
  axis: MonthsChart["axis"];
  up: (value: number) => number;
}) {
  const { x, axis, up } = props;
  const { estimate, lower, upper } = props.row;
  if (estimate === null) return null;
  const ends = lower === null || upper === null ? [] : [lower, upper];
  const ticks = ends.filter((value) => onAxis(axis, value));
  return (
    <G>
      {ends.length > 0 ? (
        <Path
          d={[
            `M${ends.map((value) => `${x} ${up(value)}`).join("L")}`,
            ...ticks.map((value) => `M${x - 2} ${up(value)}L${x + 2} ${up(value)}`),
          ].join("")}
          stroke={colours.data}
          strokeWidth={0.85}
          fill="none"
        />
      ) : null}
      <Circle cx={x} cy={up(estimate)} r={2.2} fill={colours.data} />
    </G>
  );
}
