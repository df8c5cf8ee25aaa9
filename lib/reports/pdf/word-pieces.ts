import type { DocumentFact } from "@/lib/views/document/document";
import { type FontFace, widthOf } from "./font";
import { colours, readingWidth, sizes } from "./look";
import type { Piece } from "./piece";
import { after } from "./pieces-with";
import { rowPieces } from "./row-pieces";

/** A paragraph, divided between lines where it has to be. */
export function paragraph(
  words: string,
  of: { width: number; size?: number; face?: FontFace; colour?: string; whole?: boolean },
): Piece[] {
  const { width, size = sizes.body, face, colour, whole } = of;
  const column = { words, x: 0, width: Math.min(width, readingWidth), size, face, colour };
  return rowPieces({ columns: [column], wholeUpTo: whole ? undefined : 3 });
}

export function list(items: readonly string[], width: number): Piece[] {
  const size = sizes.body;
  return items.flatMap((words, place) =>
    after(
      place === 0 ? 0 : 2,
      rowPieces({
        columns: [
          { words: "•", x: 0, width: bullet, size, colour: colours.inkSoft },
          { words, x: bullet, width: Math.min(width, readingWidth) - bullet, size },
        ],
        wholeUpTo: 3,
      }),
    ),
  );
}

const bullet = 11;

/** Names and what they stand for, side by side. */
export function factPieces(facts: readonly DocumentFact[], width: number): Piece[] {
  const size = sizes.body;
  const widest = Math.max(0, ...facts.map((fact) => widthOf(fact.name, size)));
  const name = Math.min(widest + 0.5, width * 0.32);
  const x = name + 14;
  return facts.flatMap((fact) =>
    rowPieces({
      columns: [
        { words: fact.name, x: 0, width: name, size, colour: colours.inkSoft },
        { words: fact.words, x, width: Math.min(width - x, readingWidth), size },
      ],
      down: 1,
    }),
  );
}
