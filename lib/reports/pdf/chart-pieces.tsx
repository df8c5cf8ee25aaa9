import type { IntervalChart, MonthsChart } from "@/lib/views/chart-rows";
import { IntervalDrawing } from "./interval-drawing";
import { intervalLayout } from "./interval-layout";
import { colours, type Room, readingWidth, sizes } from "./look";
import { MonthsDrawing } from "./months-drawing";
import { monthsHeight } from "./months-layout";
import type { Piece } from "./piece";
import { after, staying } from "./pieces-with";
import { paragraph } from "./word-pieces";

/** Rows with intervals under their finding and over what has to be told of them; too many rows are several drawings. */
export function intervalPieces(chart: IntervalChart, room: Room): Piece[] {
  const { width } = room;
  const wide = Math.min(width, readingWidth);
  const drawings = inParts(chart, wide, room.height - besideDrawing).map((part) => ({
    above: 4,
    height: intervalLayout(part, wide).height,
    drawing: <IntervalDrawing chart={part} width={wide} />,
  }));
  const notes = (chart.notes ?? []).flatMap((note) =>
    after(2, paragraph(note, { width, size: sizes.small, colour: colours.inkSoft, whole: true })),
  );
  const whole = [...finding(chart.title, width), ...drawings, ...notes];
  const last = whole.length - 1;
  return whole.map((piece, place) => {
    const severed = drawings.length > 1 && drawings.slice(0, -1).some((one) => one === piece);
    return { ...piece, stays: place < last && !severed };
  });
}

/** A line over months under its finding. */
export function monthPieces(chart: MonthsChart, width: number): Piece[] {
  const wide = Math.min(width, readingWidth);
  return [
    ...staying(finding(chart.title, width)),
    { above: 4, height: monthsHeight, drawing: <MonthsDrawing chart={chart} width={wide} /> },
  ];
}

function finding(title: string, width: number): Piece[] {
  return paragraph(title, { width, face: "strong", whole: true });
}

/** A chart, or its rows evenly on as many as are needed for each to be no higher than a page. */
function inParts(chart: IntervalChart, width: number, height: number): IntervalChart[] {
  for (let many = 1; ; many += 1) {
    const each = Math.max(1, Math.ceil(chart.rows.length / many));
    const parts = Array.from({ length: many }, (_, place) => ({
      ...chart,
      rows: chart.rows.slice(place * each, (place + 1) * each),
    })).filter((part, place) => place === 0 || part.rows.length > 0);
    const fit = parts.every((part) => intervalLayout(part, width).height <= height);
    if (fit || each === 1) return parts;
  }
}

/** Kept for the heading, the finding and the notes of a chart, in points. */
const besideDrawing = 90;
