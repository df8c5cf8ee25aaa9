import type { FiguresReach } from "@/lib/access/reach";
import { pool } from "../database";

const tables = [
  ...["sessions", "canals", "irrigation", "instruments", "steps", "upkeep"],
  ...["canal_facts", "visit_facts"],
];

/**
 * Lets PostgreSQL learn how the records lie, before much is asked of them: after an import it would otherwise find out by itself within
 * a minute. A role that may not is warned in the server's log, and waits for that.
 */
export async function sampleRecords(_reach: FiguresReach): Promise<void> {
  await pool().query(`analyze ${tables.join(", ")}`);
}
