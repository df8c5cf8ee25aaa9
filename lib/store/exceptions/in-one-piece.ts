import type pg from "pg";
import { pool } from "../database";
import { inTransaction } from "../import/run-import";

/** Runs the work in one transaction on a connection of its own. */
export async function inOnePiece<Answer>(
  work: (client: pg.ClientBase) => Promise<Answer>,
): Promise<Answer> {
  const client = await pool().connect();
  try {
    return await inTransaction(client, () => work(client));
  } finally {
    client.release();
  }
}
