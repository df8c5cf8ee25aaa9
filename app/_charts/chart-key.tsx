import { ChartMark, type MarkKind } from "./chart-mark";

/** What a line or a shape of a drawing stands for. */
export type KeyEntry = {
  readonly sample: MarkKind | "solid" | "dashed" | "thick" | "ticked";
  readonly words: string;
};

/** The key over a drawing: a sample and its words, as many lines as the width asks for. */
export function ChartKey(props: { entries: readonly KeyEntry[] }) {
  if (props.entries.length === 0) return null;
  return (
    <div className="row small">
      {props.entries.map(({ sample, words }) => (
        <span key={words}>
          <svg width={28} height={14} style={{ verticalAlign: "-2px" }} aria-hidden="true">
            <Sample of={sample} />
          </svg>{" "}
          {words}
        </span>
      ))}
    </div>
  );
}

function Sample(props: { of: KeyEntry["sample"] }) {
  const line = { x1: 1, x2: 27, y1: 7, y2: 7 };
  switch (props.of) {
    case "solid":
      return <line {...line} stroke="var(--data-reference)" strokeWidth={1.5} />;
    case "dashed":
      return <line {...line} stroke="var(--data-reference)" strokeDasharray="5 4" />;
    case "thick":
      return <line {...line} stroke="var(--data-1)" strokeWidth={4} />;
    case "ticked":
      return <path d="M2 7H26M2 1V13M26 1V13" stroke="var(--data-1)" strokeWidth={1.25} />;
    default:
      return <ChartMark kind={props.of} x={14} y={7} />;
  }
}
