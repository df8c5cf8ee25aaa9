import type { PlotArea, ScaleFunction } from "recharts";
import type { IntervalRow } from "@/lib/views/chart-rows";
import { Clipped } from "./clipped";
import { Whisker } from "./whisker";

/** A thin line with end ticks that stand out above and under the thick one, also where it is the shorter. */
export function OuterInterval(props: {
  outer: NonNullable<IntervalRow["outer"]>;
  across: ScaleFunction;
  area: PlotArea;
  y: number;
}) {
  const { outer, across, area, y } = props;
  return (
    <Clipped area={area}>
      <Whisker
        ends={[across(outer.lower) ?? 0, across(outer.upper) ?? 0]}
        at={y}
        tick={6}
        strokeWidth={1.25}
      />
    </Clipped>
  );
}
