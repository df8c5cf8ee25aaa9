import { View } from "@react-pdf/renderer";
import { type ChartBlock, chartWidth } from "./chart-height";
import { IntervalDrawing } from "./interval-drawing";
import { Lines } from "./lines";
import { colours, sizes } from "./look";
import { MonthsDrawing } from "./months-drawing";

/** A chart under its finding and over what a reader of the drawing has to be told, all on one page. */
export function ChartFigure(props: { block: ChartBlock; width: number }) {
  const { block, width } = props;
  const notes = block.kind === "intervals" ? (block.chart.notes ?? []) : [];
  return (
    <View wrap={false} style={{ marginTop: 4, marginBottom: 12 }}>
      <View style={{ marginBottom: 4 }}>
        <Lines words={block.chart.title} width={width} size={sizes.body} face="strong" />
      </View>
      {block.kind === "intervals" ? (
        <IntervalDrawing chart={block.chart} width={chartWidth(width)} />
      ) : (
        <MonthsDrawing chart={block.chart} width={chartWidth(width)} />
      )}
      {notes.map((note) => (
        <View key={note} style={{ marginTop: 2 }}>
          <Lines words={note} width={width} size={sizes.small} colour={colours.inkSoft} />
        </View>
      ))}
    </View>
  );
}
