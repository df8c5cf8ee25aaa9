import { usePlotArea, useXAxisScale, useYAxisScale } from "recharts";
import type { FunnelPoint } from "@/lib/views/funnel-rows";
import { ChartMark } from "./chart-mark";
import { labelPlaces } from "./label-places";
import type { PointPath } from "./point-path";
import { PointTarget } from "./point-target";

/** The points with their labels; a label without room is left out and said to be, and comes when its point is read. */
export function FunnelPoints(props: {
  points: readonly FunnelPoint[];
  path: PointPath;
  title: string;
}) {
  const area = usePlotArea();
  const across = useXAxisScale();
  const up = useYAxisScale();
  if (!area || !across || !up) return null;
  const { points, path } = props;
  const placed = points.map((point) => ({
    x: across(point.units) ?? 0,
    y: up(point.estimate) ?? 0,
    label: point.label,
    first: point.flag !== null,
  }));
  const room = { left: area.x, right: area.x + area.width, top: area.y - 8 };
  const places = labelPlaces(placed, { ...room, bottom: area.y + area.height + 6 });
  const left = places.filter((place) => place === null).length;
  return (
    <g>
      <text x={2} y={14} fontSize={14} fill="var(--ink-soft)">
        {props.title}
      </text>
      {left > 0 ? (
        <text x={2} y={31} fontSize={14} fontStyle="italic" fill="var(--ink-soft)">
          {`no room for ${left} ${left === 1 ? "label" : "labels"}: see the table`}
        </text>
      ) : null}
      {placed.map(({ x, y }, place) => {
        const label = places[place];
        return label?.leader ? (
          <line
            key={points[place]?.id}
            x1={x}
            y1={y}
            x2={label.x}
            y2={label.y}
            stroke="var(--data-reference)"
            strokeWidth={0.75}
          />
        ) : null;
      })}
      {points.map((point, place) => {
        const { x, y } = placed[place] ?? { x: 0, y: 0 };
        const active = path.active === place;
        const label =
          places[place] ?? (active ? { x: x + 12, y: y - 12, anchor: "start" as const } : null);
        return (
          <g key={point.id}>
            <ChartMark kind={point.flag ?? "plain"} x={x} y={y} />
            {label ? (
              <text
                x={label.x}
                y={label.y + 5}
                textAnchor={label.anchor}
                fontSize={14}
                fontWeight={active ? 640 : 400}
                fill="var(--ink)"
                stroke="var(--paper)"
                strokeWidth={3}
                paintOrder="stroke"
                pointerEvents="none"
              >
                {point.label}
              </text>
            ) : null}
            <PointTarget x={x} y={y} active={active} pick={() => path.pick(place)} />
          </g>
        );
      })}
    </g>
  );
}
