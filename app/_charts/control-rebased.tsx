import { useChartWidth, usePlotArea, useXAxisScale } from "recharts";
import type { ControlChart } from "@/lib/views/control-rows";
import { linesOf, textWidth } from "./chart-text";

type Rebased = ControlChart["rebased"];

/** As many letters as a line has room for on a narrow phone. */
const letters = 38;

/** How many lines of text the words about the hairlines take. */
export function rebasedLines(rebased: Rebased): number {
  return rebased.flatMap((one) => linesOf(one.words, letters)).length;
}

/** A hairline where limits begin anew, with its words over the drawing, where no point lies on them. */
export function ControlRebased(props: { rows: ControlChart["rows"]; rebased: Rebased }) {
  const area = usePlotArea();
  const across = useXAxisScale();
  const whole = useChartWidth();
  if (!area || !across || !whole) return null;
  const at = (id: string) => across(id, { position: "middle" }) ?? 0;
  return (
    <g pointerEvents="none">
      {props.rebased.map((one, place) => {
        const own = props.rows.findIndex((row) => row.id === one.id);
        const before = props.rows[own - 1];
        if (own < 0) return null;
        // Between its row and the one before, where the limits change.
        const x = before ? (at(before.id) + at(one.id)) / 2 : area.x;
        const lines = linesOf(one.words, letters);
        const top = 32 + rebasedLines(props.rebased.slice(0, place)) * 17;
        const left = Math.max(0, Math.min(x + 6, whole - textWidth(lines)));
        return (
          <g key={one.id}>
            <line
              x1={x}
              x2={x}
              y1={left > x ? top - 11 : top + lines.length * 17 - 12}
              y2={area.y + area.height}
              stroke="var(--ink)"
              strokeWidth={1}
            />
            {lines.map((line, down) => (
              <text key={line} x={left} y={top + down * 17} fontSize={14} fill="var(--ink)">
                {line}
              </text>
            ))}
          </g>
        );
      })}
    </g>
  );
}
