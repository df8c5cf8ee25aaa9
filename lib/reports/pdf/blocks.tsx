import { View } from "@react-pdf/renderer";
import type { DocumentBlock } from "@/lib/views/document/document";
import { ChartFigure } from "./chart-figure";
import { Facts } from "./facts";
import { Lines } from "./lines";
import { colours, sizes } from "./look";
import { roomAtStart } from "./room";
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
        <View style={{ marginBottom: 6 }}>
          <Lines
            words={block.words}
            width={width}
            size={size}
            colour={block.soft ? colours.inkSoft : colours.ink}
          />
        </View>
      );
    case "heading":
      return (
        <View wrap={false} minPresenceAhead={props.room} style={{ marginTop: 9, marginBottom: 3 }}>
          <Lines words={block.words} width={width} size={sizes.heading} face="strong" />
        </View>
      );
    case "list":
      return (
        <View style={{ marginBottom: 6 }}>
          {block.items.map((item, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the items of a report keep their order.
            <View key={place} style={{ flexDirection: "row", marginBottom: 2 }}>
              <Lines words="•" width={bullet} size={size} colour={colours.inkSoft} />
              <Lines words={item} width={width - bullet} size={size} />
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
