import type { DocumentPart, ReportDocument } from "@/lib/views/document/document";
import { blockPieces } from "./block-pieces";
import { colours, type Room, roomOn, sizes } from "./look";
import { type Placed, paged } from "./paged";
import type { Piece } from "./piece";
import { after, staying } from "./pieces-with";
import { factPieces, paragraph } from "./word-pieces";

export type ReportSheet = { readonly wide: boolean; readonly placed: readonly Placed[] };

/** The sheets of a report: the summary, then parts; those beside each other that lie the same way share theirs. */
export function reportSheets(report: ReportDocument): ReportSheet[] {
  return [
    { wide: false, pieces: summaryPieces(report) },
    ...runs(report.parts).map(({ wide, parts }) => ({
      wide,
      pieces: parts.flatMap((part) => partPieces(part, roomOn(wide))),
    })),
  ].flatMap(({ wide, pieces }) =>
    paged(pieces, roomOn(wide).height).map((placed) => ({ wide, placed })),
  );
}

function summaryPieces(report: ReportDocument): Piece[] {
  const room = roomOn(false);
  const { width } = room;
  return [
    ...paragraph(report.over, { width, colour: colours.inkSoft, whole: true }).map((piece) => ({
      ...piece,
      bookmark: "Summary",
      stays: true,
    })),
    ...paragraph(report.title, { width, size: sizes.title, face: "strong", whole: true }),
    ...after(12, factPieces(report.facts, width)),
    ...after(14, blockPieces(report.summary, room)),
  ];
}

function partPieces(part: DocumentPart, room: Room): Piece[] {
  const { width } = room;
  const { title, note } = part;
  const [named, ...more] = paragraph(title, {
    width,
    ...{ size: sizes.part, face: "strong", colour: colours.accent, whole: true },
  });
  const heads = [
    ...(named ? [{ ...named, above: 24, bookmark: title }, ...more] : []),
    ...(note ? paragraph(note, { width, colour: colours.inkSoft }) : []),
  ];
  return [...staying(heads), ...after(8, blockPieces(part.blocks, room, title))];
}

function runs(parts: readonly DocumentPart[]): { wide: boolean; parts: DocumentPart[] }[] {
  const found: { wide: boolean; parts: DocumentPart[] }[] = [];
  for (const part of parts) {
    const wide = part.wide ?? false;
    const last = found.at(-1);
    if (last?.wide === wide) last.parts.push(part);
    else found.push({ wide, parts: [part] });
  }
  return found;
}
