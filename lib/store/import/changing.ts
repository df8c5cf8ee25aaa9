import type pg from "pg";
import { pool } from "../database";
import { publishing } from "../wall/as-whom";
import { inTransaction } from "./run-import";
import { makeStaging } from "./staging";

/** One transaction with staging tables and `touched`, one change of the records at a time. */
export async function changing<Result>(
  work: (client: pg.ClientBase) => Promise<Result>,
): Promise<Result> {
  const client = await pool().connect();
  try {
    await makeStaging(client);
    const change = async () => {
      await client.query("select pg_advisory_xact_lock(hashtext('canal-audit publish'))");
      await client.query("create temp table touched (visit_id bigint) on commit drop");
      return work(client);
    };
    return await publishing(() => inTransaction(client, change));
  } finally {
    // Its temporary staging tables go with the connection.
    client.release(true);
  }
}
