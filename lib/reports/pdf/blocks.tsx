import { Text, View } from "@react-pdf/renderer";
import type { DocumentBlock } from "@/lib/views/document/document";
import { ChartFigure } from "./chart-figure";
import { Facts } from "./facts";
import { colours, sizes, textStyle } from "./look";
import { roomAtStart } from "./room";
import { spread } from "./spread";
import { TableGrid } from "./table-grid";

/** Blocks from top to bottom; a heading stays with what it heads. */
export function Blocks(props: {
  blocks: readonly DocumentBlock[];
  width: number;
  /** What stands above the first. */
  above?: string;
}) {
  const { blocks, width } = props;
  return blocks.map((block, place) => {
    const before = blocks[place - 1];
    const above = place === 0 ? props.above : before?.kind === "heading" ? before.words : undefined;
    return (
      <Block
        // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a report keep their order.
        key={place}
        block={block}
        width={width}
        above={above}
        room={roomAtStart(blocks.slice(place + 1), width)}
      />
    );
  });
}

function Block(props: { block: DocumentBlock; width: number; above?: string; room: number }) {
  const { block, width } = props;
  const size = sizes.body;
  switch (block.kind) {
    case "words":
      return (
        <Text
          style={{
            ...textStyle(size, { colour: block.soft ? colours.inkSoft : colours.ink }),
            marginBottom: 6,
          }}
        >
          {spread(block.words, { width, size })}
        </Text>
      );
    case "heading":
      return (
        <View wrap={false} minPresenceAhead={props.room} style={{ marginTop: 9, marginBottom: 3 }}>
          <Text style={textStyle(sizes.heading, { face: "strong" })}>{block.words}</Text>
        </View>
      );
    case "list":
      return (
        <View style={{ marginBottom: 6 }}>
          {block.items.map((item, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the items of a report keep their order.
            <View key={place} style={{ flexDirection: "row", marginBottom: 2 }}>
              <Text style={{ ...textStyle(size, { colour: colours.inkSoft }), width: bullet }}>
                •
              </Text>
              <Text style={{ ...textStyle(size), width: width - bullet }}>
                {spread(item, { width: width - bullet, size })}
              </Text>
            </View>
          ))}
        </View>
      );
    case "facts":
      return (
        <View style={{ marginBottom: 8 }}>
          <Facts facts={block.facts} width={width} />
        </View>
      );
    case "table":
      return <TableGrid table={block} width={width} labelled={block.label !== props.above} />;
    default:
      return <ChartFigure block={block} width={width} />;
  }
}

const bullet = 11;
