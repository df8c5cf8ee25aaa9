import { usePlotArea, useXAxisScale, useYAxisScale } from "recharts";
import type { ChartAxis } from "@/lib/views/chart-rows";
import type { FunnelLimit } from "@/lib/views/funnel-rows";
import { Clipped } from "./clipped";
import { spreadLines } from "./spread-lines";

/** The centre line and two pairs of limits, each named at its right end. */
export function FunnelLimits(props: {
  limits: readonly FunnelLimit[];
  centre: number;
  up: ChartAxis;
}) {
  const area = usePlotArea();
  const across = useXAxisScale();
  const up = useYAxisScale();
  if (!area || !across || !up) return null;
  const last = props.limits.at(-1);
  const end = (last && across(last.units)) ?? 0;
  // From the top down; a limit cut off at the edge of the drawing or of what a rate can be has no end to name.
  const named = last
    ? curves.filter(({ of }) => last[of] > props.up.min && last[of] < props.up.max)
    : [];
  const heights = spreadLines(
    named.map(({ of }) => (last && up(last[of])) ?? 0),
    15,
  );
  const centre = up(props.centre) ?? 0;
  return (
    <g pointerEvents="none">
      <Clipped area={area}>
        <line
          x1={area.x}
          x2={area.x + area.width}
          y1={centre}
          y2={centre}
          stroke="var(--data-reference)"
          strokeWidth={1.5}
        />
        {curves.map(({ of, dash }) => (
          <polyline
            key={of}
            points={props.limits.map((at) => `${across(at.units)},${up(at[of])}`).join(" ")}
            fill="none"
            stroke="var(--data-reference)"
            strokeWidth={1}
            strokeDasharray={dash}
          />
        ))}
      </Clipped>
      {named.map(({ of, words }, place) => (
        <text
          key={of}
          x={end + 6}
          y={(heights[place] ?? 0) + 5}
          fontSize={14}
          fill="var(--ink-soft)"
        >
          {words}
        </text>
      ))}
    </g>
  );
}

const curves = [
  { of: "upper998", words: "99.8 %", dash: undefined },
  { of: "upper95", words: "95 %", dash: "5 4" },
  { of: "lower95", words: "95 %", dash: "5 4" },
  { of: "lower998", words: "99.8 %", dash: undefined },
] as const;
