import { Page, Text, View } from "@react-pdf/renderer";
import type { ReportDocument } from "@/lib/views/document/document";
import { type FontFace, faceStyle } from "./font";
import { linesWithin } from "./lines-within";
import { colours, roomOn, sheet, sheetHeight, sizes } from "./look";
import type { ReportSheet } from "./report-sheets";

/** A page: what the report is above, what stands on it, and its foot with the page's number. */
export function Sheet(props: {
  report: ReportDocument;
  of: ReportSheet;
  page: number;
  pages: number;
}) {
  const { report, of, page, pages } = props;
  const { width } = roomOn(of.wide);
  const high = sheetHeight(of.wide);
  const foot = linesWithin(report.foot, { width: width - 70, size: edgeSize });
  return (
    <Page
      size="A4"
      orientation={of.wide ? "landscape" : "portrait"}
      wrap={false}
      style={{ backgroundColor: colours.paper }}
    >
      {/* A page that is not divided is as high as what it holds. */}
      <View style={{ height: high }}>
        {page > 1 ? (
          <>
            <EdgeLine
              words={cut(report.title, width * 0.55)}
              top={28}
              left={sheet.side}
              width={width}
            />
            <EdgeLine
              words={cut(report.over, width * 0.42)}
              top={28}
              left={sheet.side}
              width={width}
              right
            />
          </>
        ) : null}
        {of.placed.map(({ piece, top }) => (
          <View
            key={top}
            style={{ position: "absolute", left: sheet.side, top: sheet.top + top, width }}
            {...(piece.bookmark ? { bookmark: piece.bookmark } : {})}
          >
            {piece.drawing}
          </View>
        ))}
        <View
          style={{
            position: "absolute",
            left: sheet.side,
            top: high - 46,
            width,
            borderTopWidth: 0.5,
            borderTopColor: colours.rule,
          }}
        />
        {foot.slice(0, 3).map((words, place) => (
          <EdgeLine
            // biome-ignore lint/suspicious/noArrayIndexKey: lines keep their order.
            key={place}
            words={words}
            top={high - 41 + place * edgeSize * 1.2}
            left={sheet.side}
            width={width}
          />
        ))}
        <EdgeLine
          words={`${page} of ${pages}`}
          top={high - 41}
          left={sheet.side}
          width={width}
          right
        />
      </View>
    </Page>
  );
}

const edgeSize = sizes.small - 0.5;

function EdgeLine(props: {
  words: string;
  top: number;
  left: number;
  width: number;
  right?: boolean;
  face?: FontFace;
}) {
  const { words, top, left, width, right, face = "plain" } = props;
  return (
    <Text
      style={{
        ...faceStyle(face),
        fontSize: edgeSize,
        color: colours.inkSoft,
        position: "absolute",
        ...{ top, left, width },
        textAlign: right ? "right" : "left",
      }}
    >
      {words}
    </Text>
  );
}

/** The first line of words, with a sign that more was there. */
function cut(words: string, width: number): string {
  const [first = "", ...more] = linesWithin(words, { width: width - 8, size: edgeSize });
  return more.length > 0 ? `${first} …` : first;
}
