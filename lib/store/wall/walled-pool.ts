import type pg from "pg";
import { whom } from "./as-whom";

/**
 * A pool through which everything is asked as whom it is asked: of the holder on `holders`, else on `viewers`, where every transaction
 * begins by telling the database who asks. A query by itself becomes a transaction. Where nobody is named nothing is told, and the
 * database shows nothing of anybody's.
 */
export function walledPool(viewers: pg.Pool, holders: pg.Pool): pg.Pool {
  viewers.on("connect", tellingWhom);
  return new Proxy(viewers, {
    get(_, name) {
      const pool = whom() === "holder" ? holders : viewers;
      if (name === "query" && pool === viewers && whom()) return asked;
      if (name === "end") return () => Promise.all([viewers.end(), holders.end()]);
      const value = Reflect.get(pool, name, pool);
      return typeof value === "function" ? value.bind(pool) : value;
    },
  });

  async function asked(...query: unknown[]): Promise<unknown> {
    const client = await viewers.connect();
    try {
      await client.query("begin");
      const answer = await (client.query as Query)(...query);
      await client.query("commit");
      client.release();
      return answer;
    } catch (trouble) {
      // A connection that cannot even do that is gone.
      await client.query("rollback").then(
        () => client.release(),
        () => client.release(true),
      );
      throw trouble;
    }
  }
}

type Query = (...query: unknown[]) => Promise<unknown>;

/** From now on every `begin` on the connection tells as whom it is. */
function tellingWhom(client: pg.PoolClient): void {
  const plain = client.query.bind(client) as Query;
  const telling: Query = (query, ...rest) => plain(begun(query), ...rest);
  client.query = telling as pg.PoolClient["query"];
}

function begun(query: unknown): unknown {
  const now = whom();
  if (now === undefined || now === "holder") return query;
  if (typeof query === "string") return beginning.test(query) ? `${query}; ${now.sql}` : query;
  const text = (query as { text?: unknown }).text;
  if (typeof text !== "string" || !beginning.test(text)) return query;
  return { ...(query as object), text: `${text}; ${now.sql}` };
}

const beginning = /^\s*begin\b/i;
