/**
 * Heights for lines of text that each want to stand somewhere: those that would touch move apart, as little as can be
 * and evenly about where they wanted to be.
 * @param wanted heights in pixels, from the top down.
 * @param least the least distance between two lines.
 */
export function spreadLines(wanted: readonly number[], least: number): number[] {
  const blocks: Block[] = [];
  for (const height of wanted) {
    let block: Block = { middle: height, lines: 1 };
    for (let above = blocks.at(-1); above && touch(above, block, least); above = blocks.at(-1)) {
      block = joined(above, block);
      blocks.pop();
    }
    blocks.push(block);
  }
  return blocks.flatMap(({ middle, lines }) =>
    Array.from({ length: lines }, (_, line) => middle + (line - (lines - 1) / 2) * least),
  );
}

/** Lines that stand as near each other as they may. */
type Block = { readonly middle: number; readonly lines: number };

function touch(above: Block, below: Block, least: number): boolean {
  return below.middle - above.middle < ((above.lines + below.lines) / 2) * least;
}

function joined(above: Block, below: Block): Block {
  const lines = above.lines + below.lines;
  return { middle: (above.middle * above.lines + below.middle * below.lines) / lines, lines };
}
