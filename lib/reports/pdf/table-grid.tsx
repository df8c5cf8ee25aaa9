import { View } from "@react-pdf/renderer";
import type { DocumentTable } from "@/lib/views/document/document";
import { Lines } from "./lines";
import { colours, sizes } from "./look";
import { roomAtStart } from "./room";
import { cell, columnWidths, rowHeight } from "./table-layout";

/** A table whose head stands again on every page and whose rows stay whole. */
export function TableGrid(props: { table: DocumentTable; width: number; labelled: boolean }) {
  const { table, width, labelled } = props;
  const widths = columnWidths(table, width);
  const titles = table.columns.map((column) => column.title);
  return (
    <>
      <View
        wrap={false}
        minPresenceAhead={roomAtStart([table], width)}
        style={{ marginBottom: labelled ? 3 : 0 }}
      >
        {labelled ? (
          <Lines words={table.label} width={width} size={sizes.small} colour={colours.inkSoft} />
        ) : null}
      </View>
      <View style={{ marginBottom: 10 }}>
        <View fixed style={{ ...line, ...headLine }}>
          <Cells cells={titles} widths={widths} table={table} head />
        </View>
        {table.rows.map((row) => (
          <View key={row.id} wrap={rowHeight(row.cells, widths) > dividedFrom} style={line}>
            <Cells cells={row.cells} widths={widths} table={table} />
          </View>
        ))}
      </View>
    </>
  );
}

/** A row higher than this, in points, cannot stay whole on every page. */
const dividedFrom = 300;

function Cells(props: {
  cells: readonly string[];
  widths: readonly number[];
  table: DocumentTable;
  head?: boolean;
}) {
  const { cells, widths, table, head } = props;
  return table.columns.map((column, place) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: cells stand by their column's place.
    <View key={place} style={{ width: widths[place], paddingHorizontal: cell.across }}>
      <Lines
        words={cells[place] ?? ""}
        width={(widths[place] ?? 0) - 2 * cell.across}
        size={sizes.table}
        face={head ? "strong" : "plain"}
        right={column.numeric}
        again={head}
      />
    </View>
  ));
}

const line = {
  flexDirection: "row",
  paddingVertical: cell.down,
  borderBottomWidth: 0.5,
  borderBottomColor: colours.rule,
} as const;

const headLine = {
  alignItems: "flex-end",
  backgroundColor: colours.wash,
  borderBottomWidth: 0.75,
  borderBottomColor: colours.ruleStrong,
} as const;
