import { Text, View } from "@react-pdf/renderer";
import type { DocumentFact } from "@/lib/views/document/document";
import { widthOf } from "./font";
import { colours, sizes, textStyle } from "./look";
import { spread } from "./spread";

/** Names and what they stand for, side by side. */
export function Facts(props: { facts: readonly DocumentFact[]; width: number }) {
  const size = sizes.body;
  const widest = Math.max(0, ...props.facts.map((fact) => widthOf(fact.name, size)));
  const name = Math.min(widest + 14, props.width * 0.35);
  return props.facts.map((fact, place) => (
    <View
      // biome-ignore lint/suspicious/noArrayIndexKey: facts keep their order, and a name may stand twice.
      key={`${place} ${fact.name}`}
      wrap={fact.words.length > 600}
      style={{ flexDirection: "row", paddingVertical: 1 }}
    >
      <Text style={{ ...textStyle(size, { colour: colours.inkSoft }), width: name }}>
        {spread(fact.name, { width: name - 10, size })}
      </Text>
      <Text style={{ ...textStyle(size), width: props.width - name }}>
        {spread(fact.words, { width: props.width - name, size })}
      </Text>
    </View>
  ));
}
