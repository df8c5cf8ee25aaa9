import { View } from "@react-pdf/renderer";
import type { ReportDocument } from "@/lib/views/document/document";
import { Blocks } from "./blocks";
import { Facts } from "./facts";
import { Lines } from "./lines";
import { colours, contentWidth, sizes } from "./look";
import { Sheet } from "./sheet";

/** The first page: whose report it is, what must be known of it, and what it found. */
export function SummarySheet(props: { report: ReportDocument }) {
  const { report } = props;
  const width = contentWidth(false);
  return (
    <Sheet report={report} first bookmark="Summary">
      <View wrap={false} style={{ marginTop: -22, marginBottom: 14 }}>
        <Lines words={report.over} width={width} size={sizes.body} colour={colours.inkSoft} />
        <Lines words={report.title} width={width} size={sizes.title} face="strong" />
      </View>
      <View style={factsBox}>
        <Facts facts={report.facts} width={width} />
      </View>
      <Blocks blocks={report.summary} width={width} />
    </Sheet>
  );
}

const factsBox = {
  marginBottom: 12,
  paddingVertical: 6,
  borderTopWidth: 0.75,
  borderBottomWidth: 0.75,
  borderColor: colours.ruleStrong,
} as const;
