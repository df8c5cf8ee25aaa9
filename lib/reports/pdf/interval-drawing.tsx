import { G, Line, Svg } from "@react-pdf/renderer";
import type { IntervalChart } from "@/lib/views/chart-rows";
import { freeOfEachOther } from "./axis-scale";
import { ChartWords, chartText } from "./chart-words";
import { widthOf } from "./font";
import { intervalLayout } from "./interval-layout";
import { IntervalRowDrawing } from "./interval-row-drawing";
import { colours } from "./look";

/** Rows from top to bottom, values from left to right, dashed lines to compare with under their words. */
export function IntervalDrawing(props: { chart: IntervalChart; width: number }) {
  const { chart, width } = props;
  const laid = intervalLayout(chart, width);
  const { left, right, top, bottom, across } = laid;
  const ticks = chart.axis.ticks.map((tick) => ({
    ...tick,
    middle: across(tick.value),
    width: widthOf(tick.words, chartText.size),
  }));
  return (
    <Svg width={width} height={laid.height} viewBox={`0 0 ${width} ${laid.height}`}>
      {ticks.map((tick) => (
        <Line
          key={tick.value}
          x1={tick.middle}
          x2={tick.middle}
          y1={top}
          y2={bottom}
          stroke={colours.rule}
          strokeWidth={0.5}
        />
      ))}
      <Line
        x1={left}
        x2={right}
        y1={bottom}
        y2={bottom}
        stroke={colours.ruleStrong}
        strokeWidth={0.75}
      />
      {freeOfEachOther(ticks, 6).map((tick) => (
        <ChartWords
          key={tick.value}
          x={tick.middle}
          y={bottom + 10}
          end="middle"
          colour={colours.inkSoft}
        >
          {tick.words}
        </ChartWords>
      ))}
      <ChartWords x={(left + right) / 2} y={bottom + 22} end="middle" colour={colours.inkSoft}>
        {chart.axis.title}
      </ChartWords>
      <References laid={laid} />
      <ChartWords x={width} y={top - 5} end="end" colour={colours.inkSoft}>
        {chart.countsTitle}
      </ChartWords>
      {laid.rows.map((row) => (
        <IntervalRowDrawing
          key={row.row.id}
          of={row}
          laid={laid}
          axis={chart.axis}
          width={width}
          paired={chart.rows.some((one) => one.outer)}
        />
      ))}
    </Svg>
  );
}

/** The first stands nearest to the plot; a line begins under its words. */
function References(props: { laid: ReturnType<typeof intervalLayout> }) {
  const { references, top, bottom } = props.laid;
  const { line } = chartText;
  let free = top - 5;
  const placed = references.map((one) => {
    const first = free - (one.lines.length - 1) * line;
    free = first - line;
    return { ...one, first };
  });
  return (
    <G>
      {placed.map((one, place) => (
        <Line
          // biome-ignore lint/suspicious/noArrayIndexKey: references keep their order.
          key={place}
          x1={one.x}
          x2={one.x}
          y1={one.first - 7}
          y2={bottom}
          stroke={colours.reference}
          strokeWidth={1}
          strokeDasharray="3 2.5"
        />
      ))}
      {placed.flatMap((one, place) =>
        one.lines.map((words, down) => (
          <ChartWords
            // biome-ignore lint/suspicious/noArrayIndexKey: references keep their order.
            key={`${place} ${down}`}
            x={one.toLeft ? one.x - 4 : one.x + 4}
            y={one.first + down * line}
            end={one.toLeft ? "end" : "start"}
            halo
          >
            {words}
          </ChartWords>
        )),
      )}
    </G>
  );
}
