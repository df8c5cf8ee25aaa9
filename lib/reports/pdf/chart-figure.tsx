import { Text, View } from "@react-pdf/renderer";
import { type ChartBlock, chartWidth } from "./chart-height";
import { IntervalDrawing } from "./interval-drawing";
import { colours, sizes, textStyle } from "./look";
import { MonthsDrawing } from "./months-drawing";
import { spread } from "./spread";

/** A chart under its finding and over what a reader of the drawing has to be told, all on one page. */
export function ChartFigure(props: { block: ChartBlock; width: number }) {
  const { block, width } = props;
  const notes = block.kind === "intervals" ? (block.chart.notes ?? []) : [];
  return (
    <View wrap={false} style={{ marginTop: 4, marginBottom: 12 }}>
      <Text style={{ ...textStyle(sizes.body, { face: "strong" }), marginBottom: 4 }}>
        {spread(block.chart.title, { width, size: sizes.body, face: "strong" })}
      </Text>
      {block.kind === "intervals" ? (
        <IntervalDrawing chart={block.chart} width={chartWidth(width)} />
      ) : (
        <MonthsDrawing chart={block.chart} width={chartWidth(width)} />
      )}
      {notes.map((note) => (
        <Text
          key={note}
          style={{ ...textStyle(sizes.small, { colour: colours.inkSoft }), marginTop: 2 }}
        >
          {spread(note, { width, size: sizes.small })}
        </Text>
      ))}
    </View>
  );
}
