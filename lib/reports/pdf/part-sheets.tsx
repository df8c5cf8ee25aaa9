import { View } from "@react-pdf/renderer";
import type { DocumentPart, ReportDocument } from "@/lib/views/document/document";
import { Blocks } from "./blocks";
import { Lines } from "./lines";
import { colours, contentWidth, sizes } from "./look";
import { roomAtStart } from "./room";
import { Sheet } from "./sheet";

/** Parts one after the other; those beside each other that lie the same way share their sheets. */
export function PartSheets(props: { report: ReportDocument }) {
  return runs(props.report.parts).map(({ wide, parts }) => (
    <Sheet key={parts[0]?.id} report={props.report} wide={wide}>
      {parts.map((part, place) => (
        <Part key={part.id} part={part} width={contentWidth(wide)} first={place === 0} />
      ))}
    </Sheet>
  ));
}

function Part(props: { part: DocumentPart; width: number; first: boolean }) {
  const { part, width, first } = props;
  return (
    <>
      <View
        wrap={false}
        minPresenceAhead={roomAtStart(part.blocks, width)}
        style={{ marginTop: first ? 0 : 20, marginBottom: 6 }}
        {...{ bookmark: part.title }}
      >
        <Lines
          words={part.title}
          width={width}
          size={sizes.part}
          face="strong"
          colour={colours.accent}
        />
        {part.note ? (
          <Lines words={part.note} width={width} size={sizes.body} colour={colours.inkSoft} />
        ) : null}
      </View>
      <Blocks blocks={part.blocks} width={width} above={part.title} />
    </>
  );
}

function runs(parts: readonly DocumentPart[]): { wide: boolean; parts: DocumentPart[] }[] {
  const found: { wide: boolean; parts: DocumentPart[] }[] = [];
  for (const part of parts) {
    const wide = part.wide ?? false;
    const last = found.at(-1);
    if (last?.wide === wide) last.parts.push(part);
    else found.push({ wide, parts: [part] });
  }
  return found;
}
