import { Text, View } from "@react-pdf/renderer";
import type { DocumentTable } from "@/lib/views/document/document";
import { faceStyle } from "./font";
import { colours, sizes, textStyle } from "./look";
import { roomAtStart } from "./room";
import { spread } from "./spread";
import { cell, tableLayout } from "./table-layout";

/** A table whose head stands again on every page and whose rows stay whole. */
export function TableGrid(props: { table: DocumentTable; width: number; labelled: boolean }) {
  const { table, width, labelled } = props;
  const { widths, head, rows } = tableLayout(table, width);
  return (
    <>
      <View
        wrap={false}
        minPresenceAhead={roomAtStart([table], width)}
        style={{ marginBottom: labelled ? 3 : 0 }}
      >
        {labelled ? (
          <Text style={textStyle(sizes.small, { colour: colours.inkSoft })}>
            {spread(table.label, { width, size: sizes.small })}
          </Text>
        ) : null}
      </View>
      <View style={{ marginBottom: 10 }}>
        <View fixed style={{ ...line, height: head.height, ...headLine }}>
          <Cells cells={head.cells} widths={widths} table={table} head />
        </View>
        {rows.map((row) => (
          <View
            key={row.id}
            // A row higher than half a sheet has to be divided.
            wrap={row.height > 300}
            style={{ ...line, minHeight: row.height }}
          >
            <Cells cells={row.cells} widths={widths} table={table} />
          </View>
        ))}
      </View>
    </>
  );
}

function Cells(props: {
  cells: readonly string[];
  widths: readonly number[];
  table: DocumentTable;
  head?: boolean;
}) {
  const { cells, widths, table, head } = props;
  return table.columns.map((column, place) => (
    <Text
      // biome-ignore lint/suspicious/noArrayIndexKey: cells stand by their column's place.
      key={place}
      style={{
        ...(head ? headText : textStyle(sizes.table)),
        width: widths[place],
        paddingHorizontal: cell.across,
        textAlign: column.numeric ? "right" : "left",
      }}
    >
      {cells[place]}
    </Text>
  ));
}

const headText = { ...faceStyle("strong"), fontSize: sizes.table, color: colours.ink };

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
