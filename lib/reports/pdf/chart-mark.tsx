import { Circle, Path } from "@react-pdf/renderer";
import type { IntervalRow } from "@/lib/views/chart-rows";
import { colours } from "./look";

/** A point: a disc, or a diamond where it is worth a look, filled where it is worth one first. */
export function ChartMark(props: { x: number; y: number; flag?: IntervalRow["flag"] }) {
  const { x, y, flag } = props;
  if (!flag) return <Circle cx={x} cy={y} r={2.7} fill={colours.data} />;
  return (
    <Path
      d={`M${x} ${y - 4}L${x + 4} ${y}L${x} ${y + 4}L${x - 4} ${y}Z`}
      fill={flag === "look" ? colours.paper : colours.beyond}
      stroke={colours.beyond}
      strokeWidth={1.25}
    />
  );
}
