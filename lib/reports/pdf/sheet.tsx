import { Page, Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import type { ReportDocument } from "@/lib/views/document/document";
import { faceStyle } from "./font";
import { Lines } from "./lines";
import { colours, contentWidth, sheet, sizes } from "./look";

/** Sheets of one orientation, as many as the contents take: what the report is above, its foot and the page below. */
export function Sheet(props: {
  report: ReportDocument;
  wide?: boolean;
  first?: boolean;
  bookmark?: string;
  children: ReactNode;
}) {
  const { report, wide = false, first = false } = props;
  const width = contentWidth(wide);
  return (
    <Page
      size="A4"
      orientation={wide ? "landscape" : "portrait"}
      {...(props.bookmark ? { bookmark: props.bookmark } : {})}
      style={{
        paddingTop: sheet.top,
        paddingBottom: sheet.bottom,
        paddingHorizontal: sheet.side,
        backgroundColor: colours.paper,
      }}
    >
      <View fixed style={{ ...edge, top: 28, width }}>
        <Text
          style={{ ...edgeText, width: width * 0.55, maxLines: 1, textOverflow: "ellipsis" }}
          render={({ pageNumber }) => (first && pageNumber === 1 ? "" : report.title)}
        />
        <Text
          style={{
            ...edgeText,
            width: width * 0.43,
            textAlign: "right",
            maxLines: 1,
            textOverflow: "ellipsis",
          }}
          render={({ pageNumber }) => (first && pageNumber === 1 ? "" : report.over)}
        />
      </View>
      <View fixed style={{ ...edge, ...footEdge, width }}>
        <Lines
          words={report.foot}
          width={width - 70}
          size={edgeText.fontSize}
          colour={colours.inkSoft}
          again
        />
        <Text
          style={{ ...edgeText, width: 60, textAlign: "right" }}
          render={({ pageNumber, totalPages }) => `${pageNumber} of ${totalPages ?? pageNumber}`}
        />
      </View>
      {props.children}
    </Page>
  );
}

const edge = {
  position: "absolute",
  left: sheet.side,
  flexDirection: "row",
  justifyContent: "space-between",
} as const;

const footEdge = {
  top: undefined,
  bottom: 24,
  minHeight: 22,
  paddingTop: 5,
  borderTopWidth: 0.5,
  borderTopColor: colours.rule,
};

const edgeText = { ...faceStyle("plain"), fontSize: sizes.small - 0.5, color: colours.inkSoft };
