import { View } from "@react-pdf/renderer";
import type { DocumentFact } from "@/lib/views/document/document";
import { widthOf } from "./font";
import { Lines } from "./lines";
import { colours, sizes } from "./look";

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
      <View style={{ width: name }}>
        <Lines words={fact.name} width={name - 10} size={size} colour={colours.inkSoft} />
      </View>
      <Lines words={fact.words} width={props.width - name} size={size} />
    </View>
  ));
}
