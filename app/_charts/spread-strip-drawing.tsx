"use client";

import {
  ComposedChart,
  ResponsiveContainer,
  usePlotArea,
  useXAxisScale,
  useYAxisScale,
  XAxis,
  YAxis,
} from "recharts";
import type { SpreadBin, SpreadRow } from "@/lib/views/chart-rows";
import { acrossTicks } from "./chart-axes";
import { textWidth } from "./chart-text";
import { OuterInterval } from "./outer-interval";
import { PointPathBox, usePointPath } from "./point-path";
import { referenceStroke } from "./reference-lines";

/** The units as columns over a line of values; the median and its interval lie under them. */
export function SpreadStripDrawing(props: { row: SpreadRow; height: number }) {
  const { axis, bins, title } = props.row;
  const path = usePointPath(bins.map((bin) => ({ id: String(bin.from), words: bin.words })));
  const most = Math.max(1, ...bins.map((bin) => bin.units));
  return (
    <PointPathBox label={title} path={path}>
      <ResponsiveContainer width="100%" height={props.height}>
        <ComposedChart
          accessibilityLayer={false}
          margin={{ top: 40, right: 14, bottom: 20, left: 14 }}
        >
          <XAxis {...acrossTicks(axis, -14)} />
          {/* A fifth of the height is kept under the columns for the median and its interval. */}
          <YAxis hide type="number" domain={[-most / 4, most]} allowDataOverflow />
          <Columns bins={bins} active={path.active} pick={path.pick} />
          <Median row={props.row} at={-most / 8} />
        </ComposedChart>
      </ResponsiveContainer>
    </PointPathBox>
  );
}

function Columns(props: {
  bins: readonly SpreadBin[];
  active: number | null;
  pick: (place: number) => void;
}) {
  const area = usePlotArea();
  const across = useXAxisScale();
  const up = useYAxisScale();
  if (!area || !across || !up) return null;
  const foot = up(0) ?? 0;
  return (
    <g>
      {props.bins.map((bin, place) => {
        const left = across(bin.from) ?? 0;
        const width = Math.max(1, (across(bin.until) ?? 0) - left - 1);
        const top = up(bin.units) ?? foot;
        return (
          // biome-ignore lint/a11y/noStaticElementInteractions: the keyboard path is the drawing's own (PointPathBox).
          <g
            key={bin.from}
            onMouseEnter={() => props.pick(place)}
            onClick={() => props.pick(place)}
          >
            <rect
              x={left}
              y={area.y}
              width={width}
              height={foot - area.y}
              fill={props.active === place ? "var(--wash)" : "transparent"}
            />
            <rect
              x={left}
              y={top}
              width={width}
              height={foot - top}
              fill="var(--data-faint)"
              stroke={props.active === place ? "var(--ink)" : "none"}
            />
          </g>
        );
      })}
      <line x1={area.x} x2={area.x + area.width} y1={foot} y2={foot} stroke="var(--rule-strong)" />
    </g>
  );
}

function Median(props: { row: SpreadRow; at: number }) {
  const { median, lower, upper, outer, medianWords, reference } = props.row;
  const area = usePlotArea();
  const across = useXAxisScale();
  const up = useYAxisScale();
  if (!area || !across || !up || median === null) return null;
  const y = up(props.at) ?? 0;
  const x = across(median) ?? 0;
  const beside = reference ? (across(reference.value) ?? 0) : null;
  return (
    <g pointerEvents="none">
      {beside === null ? null : (
        <line
          x1={beside}
          x2={beside}
          y1={area.y}
          y2={area.y + area.height}
          {...referenceStroke(true)}
        />
      )}
      <line x1={x} x2={x} y1={area.y - 18} y2={y} stroke="var(--data-1)" strokeWidth={2} />
      {lower !== null && upper !== null ? (
        <line
          x1={across(lower)}
          x2={across(upper)}
          y1={y}
          y2={y}
          stroke="var(--data-1)"
          strokeWidth={3}
        />
      ) : null}
      {outer ? <OuterInterval outer={outer} across={across} area={area} y={y} /> : null}
      <circle cx={x} cy={y} r={5} fill="var(--data-1)" />
      <LineLabel
        words={medianWords}
        x={x}
        y={area.y - 23}
        from={area.x}
        until={area.x + area.width}
        left={beside !== null && x < beside}
      />
      {reference && beside !== null ? (
        <LineLabel
          words={reference.words}
          x={beside}
          y={area.y - 6}
          from={area.x}
          until={area.x + area.width}
          left={beside <= x}
        />
      ) : null}
    </g>
  );
}

/**
 * Words at a line, on the side away from the other line where there is room, else against the drawing's end on that side;
 * the paper shows around them, not a line through them.
 */
function LineLabel(props: {
  words: string;
  x: number;
  y: number;
  from: number;
  until: number;
  left: boolean;
}) {
  const { words, x, y, from, until } = props;
  const room = textWidth([words]);
  const fits = props.left ? x - from >= room : until - x >= room;
  const beside = props.left ? x - 6 : x + 6;
  const place = fits ? beside : props.left ? from - 12 : until + 12;
  const end = fits === props.left;
  return (
    <text
      x={place}
      y={y}
      textAnchor={end ? "end" : "start"}
      fontSize={14}
      fill="var(--ink)"
      stroke="var(--paper)"
      strokeWidth={4}
      paintOrder="stroke"
    >
      {words}
    </text>
  );
}
