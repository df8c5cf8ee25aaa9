import type pg from "pg";
import { pool } from "../database";

/** Runs `work` on one unchanging state of the records, however long it reads and whatever comes in meanwhile. */
export async function inSnapshot<Result>(
  work: (client: pg.ClientBase) => Promise<Result>,
): Promise<Result> {
  const client = await pool().connect();
  try {
    await client.query("begin isolation level repeatable read read only");
    const result = await work(client);
    await client.query("commit");
    return result;
  } catch (trouble) {
    await client.query("rollback");
    throw trouble;
  } finally {
    client.release();
  }
}
