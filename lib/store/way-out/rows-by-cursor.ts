import type pg from "pg";

/** Rows in memory at a time. */
const fetched = 5000;

/** The rows of a query, some thousand at a time; the caller has begun a transaction and reads one such query at a time. */
export async function* rowsByCursor<Row extends pg.QueryResultRow>(
  client: pg.ClientBase,
  query: string,
  parameters: readonly unknown[],
): AsyncGenerator<Row> {
  await client.query(`declare way_out no scroll cursor for ${query}`, [...parameters]);
  try {
    for (;;) {
      const { rows } = await client.query<Row>(`fetch ${fetched} from way_out`);
      yield* rows;
      if (rows.length < fetched) return;
    }
  } finally {
    // A transaction that has failed closes it by itself.
    await client.query("close way_out").catch(() => undefined);
  }
}
