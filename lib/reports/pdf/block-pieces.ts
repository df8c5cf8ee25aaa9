import type { DocumentBlock } from "@/lib/views/document/document";
import { intervalPieces, monthPieces } from "./chart-pieces";
import { colours, type Room, sizes } from "./look";
import type { Piece } from "./piece";
import { after, staying } from "./pieces-with";
import { tablePieces } from "./table-pieces";
import { factPieces, list, paragraph } from "./word-pieces";

/**
 * Blocks from top to bottom; a heading stays with what it heads.
 * @param title what stands above the first.
 */
export function blockPieces(blocks: readonly DocumentBlock[], room: Room, title?: string): Piece[] {
  return blocks.flatMap((block, place) => {
    const before = blocks[place - 1];
    const headed = place === 0 ? title : before?.kind === "heading" ? before.words : undefined;
    return after(gap(block, before), piecesOf(block, room, headed));
  });
}

function piecesOf(block: DocumentBlock, room: Room, headed: string | undefined): Piece[] {
  const { width } = room;
  switch (block.kind) {
    case "words":
      return paragraph(block.words, { width, colour: block.soft ? colours.inkSoft : colours.ink });
    case "heading":
      return staying(
        paragraph(block.words, { width, size: sizes.heading, face: "strong", whole: true }),
      );
    case "list":
      return list(block.items, width);
    case "facts":
      return factPieces(block.facts, width);
    case "table":
      // A table that says only what its heading says is not named twice.
      return tablePieces(block, width, block.label !== headed);
    case "intervals":
      return intervalPieces(block.chart, room);
    case "months":
      return monthPieces(block.chart, width);
  }
}

function gap(block: DocumentBlock, before: DocumentBlock | undefined): number {
  if (!before || before.kind === "heading") return 4;
  if (block.kind === "heading") return 16;
  return block.kind === "words" && before.kind === "words" ? 6 : 10;
}
