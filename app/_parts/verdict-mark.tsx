import type { Verdict } from "@/lib/views/verdict-words";

/** A verdict: a shape, then its words. */
export function VerdictMark(props: { of: Verdict }) {
  return <span className={`mark mark-${props.of.mark}`}>{props.of.words}</span>;
}
