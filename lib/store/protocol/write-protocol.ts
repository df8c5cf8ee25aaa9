import type pg from "pg";
import type { FiguresReach } from "@/lib/access/reach";
import { Refused } from "@/lib/access/refused";
import { pool } from "../database";
import { raiseRevision } from "../facts/revision";

/**
 * Changes the protocol of practices in one transaction, one change of a practice after the other, and raises the
 * revision, so that what was computed by it is computed anew. Nothing is kept where `write` answers `undone`.
 *
 * @throws Refused where one of the practices is not the reach's to change
 */
export async function writeProtocol<Answer>(
  reach: FiguresReach,
  practices: readonly string[],
  write: (client: pg.ClientBase) => Promise<Answer | Undone<Answer>>,
): Promise<Answer> {
  requireMayChange(reach, practices);
  const client = await pool().connect();
  try {
    await client.query("begin");
    const { rowCount } = await client.query(
      "select from practices where code = any($1) order by code for no key update",
      [practices],
    );
    if (rowCount !== new Set(practices).size) throw new Refused("There is no such practice.");
    const answer = await write(client);
    if (isUndone(answer)) {
      await client.query("rollback");
      return answer.undone;
    }
    await raiseRevision(client);
    await client.query("commit");
    return answer;
  } catch (error) {
    await client.query("rollback");
    throw error;
  } finally {
    client.release();
  }
}

/** What `write` answers where nothing is to be kept. */
export type Undone<Answer> = { readonly undone: Answer };

function isUndone<Answer>(answer: Answer | Undone<Answer>): answer is Undone<Answer> {
  return typeof answer === "object" && answer !== null && "undone" in answer;
}

function requireMayChange(reach: FiguresReach, practices: readonly string[]): void {
  if (!reach.byClinician) throw new Refused("Only a clinical lead may change the protocol.");
  const other = practices.find((code) => reach.practices?.includes(code) === false);
  if (other !== undefined)
    throw new Refused(`The protocol of practice ${other} is not yours to change.`);
}
