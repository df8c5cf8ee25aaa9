import type { ReactNode } from "react";
import { RefusalBoundary } from "./refusal-boundary";

/** The layout of a folder whose pages can be refused: it stands between Next's own boundary and the page. */
export function Refusable(props: { children: ReactNode }) {
  return <RefusalBoundary>{props.children}</RefusalBoundary>;
}
