import type { Piece } from "./piece";

export type Placed = { readonly piece: Piece; readonly top: number };

/**
 * Pieces on pages, each with its place from the top.
 * @param room the height of a page, in points.
 */
export function paged(pieces: readonly Piece[], room: number): Placed[][] {
  const pages: Placed[][] = [[]];
  let used = 0;
  const put = (piece: Piece) => {
    const page = pages.at(-1);
    const top = page?.length === 0 ? 0 : used + (piece.above ?? 0);
    page?.push({ piece, top });
    used = top + piece.height;
  };
  const turn = (first: Piece | undefined) => {
    pages.push([]);
    used = 0;
    if (first?.head) put(first.head);
  };
  for (const group of groups(pieces)) {
    if (used > 0 && used + heightOf(group) > room) turn(group[0]);
    for (const piece of group) {
      // What belongs together and is higher than a page is divided all the same.
      if (used > 0 && used + (piece.above ?? 0) + piece.height > room) turn(piece);
      put(piece);
    }
  }
  return pages.filter((page) => page.length > 0);
}

/** Pieces that have to stand on one page. */
function groups(pieces: readonly Piece[]): Piece[][] {
  const found: Piece[][] = [];
  let open = false;
  for (const piece of pieces) {
    if (open) found.at(-1)?.push(piece);
    else found.push([piece]);
    open = piece.stays ?? false;
  }
  return found;
}

function heightOf(group: readonly Piece[]): number {
  return group.reduce((sum, piece) => sum + (piece.above ?? 0) + piece.height, 0);
}
