import type { Piece } from "./piece";

/** Pieces with room above the first. */
export function after(above: number, pieces: readonly Piece[]): Piece[] {
  return pieces.map((piece, place) => (place === 0 ? { ...piece, above } : piece));
}

/** Pieces that all stand on the page of what follows them. */
export function staying(pieces: readonly Piece[]): Piece[] {
  return pieces.map((piece) => ({ ...piece, stays: true }));
}
