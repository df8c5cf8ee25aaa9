import { usePlotArea, useXAxisScale, useYAxisScale } from "recharts";
import type { ControlRow } from "@/lib/views/control-rows";
import { Clipped } from "./clipped";
import type { PointPath } from "./point-path";
import { stepPath } from "./step-path";

/** Centre line and limits as steps, and the columns that the pointer meets. */
export function ControlLines(props: {
  rows: readonly ControlRow[];
  path: PointPath;
  title: string;
  rebased: readonly { readonly id: string }[];
}) {
  const area = usePlotArea();
  const across = useXAxisScale();
  const up = useYAxisScale();
  if (!area || !across || !up) return null;
  const { rows, path, rebased } = props;
  const middles = rows.map((row) => across(row.id, { position: "middle" }) ?? 0);
  const half = halfStep(middles, area.width);
  const anew = new Set(rebased.map((one) => one.id));
  const steps = (of: "centre" | "lower" | "upper") =>
    stepPath(
      rows.map((row, place) => {
        const value = row[of];
        const height = value === null ? null : (up(value) ?? null);
        return { middle: middles[place] ?? 0, height, anew: anew.has(row.id) };
      }),
      half,
    );
  return (
    <g>
      <text x={2} y={14} fontSize={14} fill="var(--ink-soft)">
        {props.title}
      </text>
      {rows.map((row, place) => (
        // biome-ignore lint/a11y/noStaticElementInteractions: the keyboard path is the drawing's own (PointPathBox).
        <rect
          key={row.id}
          x={(middles[place] ?? 0) - half}
          y={area.y}
          width={half * 2}
          height={area.height}
          fill={path.active === place ? "var(--wash)" : "transparent"}
          onMouseEnter={() => path.pick(place)}
          onClick={() => path.pick(place)}
        />
      ))}
      <g pointerEvents="none">
        <Clipped area={area}>
          <path d={steps("centre")} fill="none" stroke="var(--data-reference)" strokeWidth={1.5} />
          {(["lower", "upper"] as const).map((of) => (
            <path
              key={of}
              d={steps(of)}
              fill="none"
              stroke="var(--data-reference)"
              strokeWidth={1}
              strokeDasharray="3 2"
            />
          ))}
        </Clipped>
      </g>
    </g>
  );
}

function halfStep(middles: readonly number[], width: number): number {
  const [first, second] = middles;
  return first === undefined || second === undefined ? width / 2 : (second - first) / 2;
}
