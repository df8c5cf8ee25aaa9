import { Text, View } from "@react-pdf/renderer";
import { type FontFace, faceStyle, widthOf } from "./font";
import { linesWithin } from "./lines-within";
import { colours, leading } from "./look";

/**
 * Words over a width, each line a text of its own: the renderer lets long words stand out and reckons with the end of
 * a line as with a letter, so that lines set here would not be those that are drawn.
 */
export function Lines(props: {
  words: string;
  width: number;
  size: number;
  face?: FontFace;
  colour?: string;
  right?: boolean;
  /** On a part that stands again on every page. */
  again?: boolean;
}) {
  const { words, width, size, face = "plain", colour = colours.ink, right, again } = props;
  const lines = linesWithin(words, { width, size, face });
  return (
    <View style={{ width }}>
      {lines.map((line, place) => (
        <Text
          // biome-ignore lint/suspicious/noArrayIndexKey: lines keep their order.
          key={place}
          style={{
            ...faceStyle(face),
            fontSize: size,
            color: colour,
            // A height that is set would grow from page to page.
            ...(again ? {} : { lineHeight: leading }),
            // A hair more than measured, on the side that is free.
            width: right ? width : widthOf(line, size, face) + 2,
            textAlign: right ? "right" : "left",
          }}
        >
          {line}
        </Text>
      ))}
    </View>
  );
}
