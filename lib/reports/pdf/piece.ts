import type { ReactNode } from "react";

/** What is never divided between two pages, with its height in points: sheets are filled by adding these up. */
export type Piece = {
  readonly height: number;
  /** Left free above it, but at the top of a page. */
  readonly above?: number;
  /** Has to stand on the page of what follows. */
  readonly stays?: boolean;
  /** What stands above it where a page begins with it: the head of its table. */
  readonly head?: Piece;
  readonly bookmark?: string;
  readonly drawing: ReactNode;
};
