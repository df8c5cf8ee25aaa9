import { Rect, Text } from "@react-pdf/renderer";
import { type FontFace, faceStyle, widthOf } from "./font";
import { colours, sizes } from "./look";

/** The size of letters in charts, and the height of their lines. */
export const chartText = { size: sizes.small, line: 10.5 } as const;

/** Words in a drawing; with `halo`, nothing that lies under them runs through them. */
export function ChartWords(props: {
  x: number;
  y: number;
  children: string;
  end?: "start" | "middle" | "end";
  face?: FontFace;
  colour?: string;
  halo?: boolean;
}) {
  const { x, y, children: words, end = "start", face = "plain", colour = colours.ink } = props;
  const wide = widthOf(words, chartText.size, face);
  const left = end === "start" ? x : end === "end" ? x - wide : x - wide / 2;
  return (
    <>
      {props.halo ? (
        <Rect
          x={left - 1.5}
          y={y - chartText.size + 0.5}
          width={wide + 3}
          height={chartText.line - 0.5}
          fill={colours.paper}
        />
      ) : null}
      {/* Placed by its beginning, which the renderer and the measure agree on. */}
      <Text x={left} y={y} fill={colour} style={{ ...faceStyle(face), ...size }}>
        {words}
      </Text>
    </>
  );
}

// The renderer knows sizes of letters in drawings that its types do not.
const size = { fontSize: chartText.size } as object;
