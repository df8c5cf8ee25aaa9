import { generateClient } from "@/prisma/generate";

/** Makes the database client where it is missing or stale, so that the command may be the first thing run after `npm ci`. */
export async function readyClient(): Promise<void> {
  await generateClient();
}
