import type { PlotArea, ScaleFunction } from "recharts";
import type { IntervalRow } from "@/lib/views/chart-rows";
import { Clipped } from "./clipped";

/** A thin line with end ticks that stand out above and under the thick one, also where it is the shorter. */
export function OuterInterval(props: {
  outer: NonNullable<IntervalRow["outer"]>;
  across: ScaleFunction;
  area: PlotArea;
  y: number;
}) {
  const { outer, across, area, y } = props;
  const [left, right] = [across(outer.lower), across(outer.upper)];
  return (
    <Clipped area={area}>
      <path
        d={`M${left} ${y}H${right}M${left} ${y - 6}V${y + 6}M${right} ${y - 6}V${y + 6}`}
        stroke="var(--data-1)"
        strokeWidth={1.25}
      />
    </Clipped>
  );
}
