import type pg from "pg";
import type { OwnReach } from "@/lib/access/reach";
import { raiseRevision } from "../facts/revision";
import type { ExceptionKey } from "./exception-key";
import { inOnePiece } from "./in-one-piece";
import { requireOwn } from "./whose-work";

/** What a clinician enters; the note is free text and stays with the exception. */
export type Entered = {
  readonly userId: string;
  readonly reason: string;
  /** Null: none. */
  readonly note: string | null;
};

/**
 * Enters an exception for one's own work. It takes the place of one entered before, which is kept as withdrawn. Where
 * the records bear an exception of the same key that one stands, and nothing is entered.
 *
 * @throws Refused where it is not one's own work
 */
export async function enterException(
  reach: OwnReach,
  key: ExceptionKey,
  entered: Entered,
): Promise<"entered" | "in the records"> {
  return inOnePiece(async (client) => {
    const visitId = await requireOwn(client, reach, key);
    // Two who enter at once wait for each other here; and whoever changes records takes the two in this order.
    await client.query("select month_units_lock()");
    await raiseRevision(client);
    const { rowCount } = await client.query(
      "select from exceptions where visit_id = $1 and canal = $2 and criterion = $3",
      [visitId, key.canal, key.criterion],
    );
    if (rowCount) return "in the records";
    await withdraw(client, reach, key);
    await client.query(
      `insert into entered_exceptions (practice, session_id, canal, criterion, reason, note, user_id, by)
       values ($1, $2, $3, $4, $5, $6, $7, $8)`,
      [...partsOf(key), entered.reason, entered.note, entered.userId, reach.by],
    );
    return "entered";
  });
}

/** Withdraws what was entered for one's own work; it is kept as withdrawn. False where there is none. @throws Refused */
export async function withdrawException(reach: OwnReach, key: ExceptionKey): Promise<boolean> {
  return inOnePiece(async (client) => {
    await requireOwn(client, reach, key);
    await client.query("select month_units_lock()");
    await raiseRevision(client);
    return withdraw(client, reach, key);
  });
}

async function withdraw(
  client: pg.ClientBase,
  reach: OwnReach,
  key: ExceptionKey,
): Promise<boolean> {
  const { rowCount } = await client.query(
    `update entered_exceptions set withdrawn_at = now(), withdrawn_by = $5
     where practice = $1 and session_id = $2 and canal = $3 and criterion = $4 and withdrawn_at is null`,
    [...partsOf(key), reach.by],
  );
  return (rowCount ?? 0) > 0;
}

function partsOf({ practice, sessionId, canal, criterion }: ExceptionKey): string[] {
  return [practice, sessionId, canal, criterion];
}
