import type { RateDrawing as Drawing } from "@/lib/views/criterion-quarters";

/** A rate, its interval and the target's line on a scale; the words stand beside it in the table. */
export function RateDrawing(props: { drawing: Drawing | null }) {
  const { drawing } = props;
  if (!drawing) return null;
  const x = (place: number) => `${place}%`;
  return (
    <svg aria-hidden="true" focusable="false">
      <title>Rate, interval and target</title>
      <line x1="0" x2="100%" y1="50%" y2="50%" stroke="var(--rule)" />
      <line
        x1={x(drawing.target)}
        x2={x(drawing.target)}
        y1="0"
        y2="100%"
        stroke="var(--data-reference)"
        strokeDasharray="3 2"
        strokeWidth="1.5"
      />
      <line
        x1={x(drawing.lower)}
        x2={x(drawing.upper)}
        y1="50%"
        y2="50%"
        stroke="var(--data-1)"
        strokeWidth="3"
      />
      <circle cx={x(drawing.estimate)} cy="50%" r="4" fill="var(--data-1)" />
    </svg>
  );
}
