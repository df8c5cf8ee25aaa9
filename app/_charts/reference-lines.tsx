import { usePlotArea, useXAxisScale, useYAxisScale } from "recharts";
import type { ChartAxis, ChartReference } from "@/lib/views/chart-rows";
import { referenceLabel } from "./chart-text";

/** Upright lines to compare with, each with its words over the drawing. */
export function UprightReferences(props: {
  references: readonly ChartReference[];
  axis: ChartAxis;
}) {
  const area = usePlotArea();
  const across = useXAxisScale();
  if (!area || !across) return null;
  return (
    <g pointerEvents="none">
      {props.references.map((reference, place) => {
        const x = across(reference.value) ?? 0;
        const { anchor, up } = referenceLabel(reference, props.axis, place);
        return (
          <g key={reference.words}>
            <line
              x1={x}
              x2={x}
              y1={area.y}
              y2={area.y + area.height}
              {...referenceStroke(place > 0)}
            />
            <text x={x} y={area.y - up} textAnchor={anchor} fontSize={14} fill="var(--ink)">
              {reference.words}
            </text>
          </g>
        );
      })}
    </g>
  );
}

/** Level lines to compare with; their words stand elsewhere. */
export function LevelReferences(props: { references: readonly ChartReference[] }) {
  const area = usePlotArea();
  const up = useYAxisScale();
  if (!area || !up) return null;
  return (
    <g pointerEvents="none">
      {props.references.map((reference, place) => (
        <line
          key={reference.words}
          x1={area.x}
          x2={area.x + area.width}
          y1={up(reference.value)}
          y2={up(reference.value)}
          {...referenceStroke(place > 0)}
        />
      ))}
    </g>
  );
}

/** How a line to compare with is drawn. */
export function referenceStroke(dashed: boolean) {
  return {
    stroke: "var(--data-reference)",
    strokeWidth: 1.5,
    strokeDasharray: dashed ? "5 4" : undefined,
  };
}
