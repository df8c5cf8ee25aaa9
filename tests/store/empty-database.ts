import { afterEach, beforeEach } from "vitest";
import { holderReach } from "@/lib/access/reach";
import { disconnect } from "@/lib/store/database";
import type { ScratchDatabase } from "@/lib/store/home/scratch-database";
import { benchRows } from "@/lib/store/mend/bench-rows";
import { freshDatabase } from "../fresh-database";

let database: ScratchDatabase;

/** Every test of the file runs on an empty database. */
export function eachOnEmptyDatabase(): void {
  beforeEach(open);
  afterEach(close);
}

/** An empty database instead of the one that the test has filled. */
export async function anotherEmptyDatabase(): Promise<void> {
  await close();
  await open();
}

/** The rows held now. */
export async function heldRows() {
  return (await benchRows(holderReach().records, { state: "held", limit: 100, offset: 0 })).rows;
}

async function open(): Promise<void> {
  database = await freshDatabase();
  process.env.DATABASE_URL = database.url;
}

async function close(): Promise<void> {
  await disconnect();
  await database.drop();
}
