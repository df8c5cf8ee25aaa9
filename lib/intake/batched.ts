/**
 * Rows as a stream, some at a time: going from one step to the next costs a promise, which is more than checking most rows. Each batch is
 * gone through before the next is asked for. One by one where that does not matter.
 */
export class Batched<Row> implements AsyncIterable<Row> {
  constructor(readonly batches: AsyncGenerator<Iterable<Row>>) {}

  async *[Symbol.asyncIterator](): AsyncGenerator<Row> {
    for await (const batch of this.batches) yield* batch;
  }
}

/** Rows that come one by one, gathered. */
export function gathered<Row>(rows: AsyncIterable<Row>): Batched<Row> {
  return new Batched(inBatches(rows));
}

const atATime = 100;

async function* inBatches<Row>(rows: AsyncIterable<Row>): AsyncGenerator<Row[]> {
  let some: Row[] = [];
  for await (const row of rows) {
    some.push(row);
    if (some.length < atATime) continue;
    yield some;
    some = [];
  }
  if (some.length > 0) yield some;
}
